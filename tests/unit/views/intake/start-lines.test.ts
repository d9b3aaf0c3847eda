import { describe, expect, it } from 'vitest';
import { readIntake } from '#lib/domain/intake/read-intake.ts';
import { answerLines, weeksInWords } from '#lib/views/intake/answer-lines.ts';
import { startLines, waitsInWords } from '#lib/views/intake/board-lines.ts';
import { guardianLines, holdLines, wordLines } from '#lib/views/intake/start-page.ts';
import { ALL_NO, aDraft } from '#tests/fixtures/intake-draft.ts';

const NOW = new Date('2026-11-25T10:00:00.000Z');
const linesOf = (over: Parameters<typeof aDraft>[0] = {}) => {
  const read = readIntake(aDraft(over), { now: NOW.toISOString(), year: 2026, guardianNamed: false });
  if (!('answers' in read)) throw new Error('not whole');
  return Object.fromEntries(answerLines(read.answers).map(({ step, lines }) => [step, lines]));
};

describe('what was told, in lines', () => {
  it('says every answer', () => {
    expect(linesOf()).toEqual({
      you: ['18 or older', 'Born in 1990', '64.5 kg'],
      health: ['No to all of them'],
      signs: ['None of them'],
      pain: ['Right elbow, inner: 3 of 10, for 6 weeks'],
      week: [
        '3 days of 75 min, 6 of 10 hard',
        'Trained in the last three weeks',
        'Other sport: climbing on Sundays',
        'Work: baker',
      ],
      kit: ['Rings', 'Ground: hard'],
      goals: ['Handstand', '“A free handstand”'],
    });
  });

  it('says a yes, nothing that hurts, no kit, a break', () => {
    const lines = linesOf({
      you: { bodyMassKg: '' },
      health: { said: { ...ALL_NO, neck: 'yes' }, words: 'Whiplash' },
      pain: { nothing: true, places: [] },
      week: { trains: 'no', breakWeeks: '10' },
      kit: { kit: [] },
    });
    expect(lines.you).toContain('Body mass: not told');
    expect(lines.health).toEqual(['Yes: neck injury', '“Whiplash”']);
    expect(lines.pain).toEqual(['Nothing hurts']);
    expect(lines.week).toContain('No training for 10 weeks');
    expect(lines.kit).toContain('No kit');
    expect([0, 1, 3].map(weeksInWords)).toEqual(['since a few days', 'for a week', 'for 3 weeks']);
  });

  it('leaves out what an older form did not ask', () => {
    expect(answerLines({ goal: 'Front lever' })).toEqual([
      { step: 'goals', title: 'What you want', lines: ['“Front lever”'] },
    ]);
    expect(answerLines({})).toEqual([]);
  });
});

describe('what waits', () => {
  const news = (over: object = {}) => ({
    clientId: 'z',
    name: 'Zofia',
    told: ['eyes'],
    guardian: false,
    sentAt: null,
    ...over,
  });

  it('is one line a client at the head of the board, at most four and a count', () => {
    expect(startLines([])).toEqual([]);
    expect(startLines([news()])).toEqual([
      {
        words: 'Zofia: upside-down work is held until a clinician’s word (eye pressure or retina)',
        href: '/clients/z/intake',
      },
    ]);
    expect(
      startLines([news({ told: ['sign:chest-pain', 'eyes'], guardian: true, sentAt: NOW })])[0]?.words,
    ).toBe(
      'Zofia: the plan is held until a clinician’s word (chest pain, eye pressure or retina); under 18, waits for the yes of a parent or guardian; answers of the start have come',
    );
    const many = startLines(Array.from({ length: 7 }, () => news()));
    expect(many).toHaveLength(5);
    expect(many.at(-1)?.words).toContain('3 more');
  });

  it('is a sentence on the client page', () => {
    expect(waitsInWords({ name: 'Zofia', told: [], agree: true })).toBe('');
    expect(waitsInWords({ name: 'Zofia', told: ['eyes'], agree: false })).toBe(
      'Upside-down work is held until a clinician’s word (eye pressure or retina). Zofia is under 18, and no parent or guardian agrees yet: training does not begin.',
    );
  });

  it('lists danger signs first, then the questions as they are asked; what begins later says so', () => {
    const lines = holdLines(
      [
        { told: 'pregnancy', from: '2026-11-20' },
        { told: 'sign:swelling', from: '2026-11-25' },
        { told: 'eyes', from: '2026-12-11' },
      ],
      '2026-11-25',
    );
    expect(lines.map(({ told, isAhead }) => [told, isAhead])).toEqual([
      ['sign:swelling', false],
      ['eyes', true],
      ['pregnancy', false],
    ]);
    expect(lines[0]?.since).toContain('the whole plan is held since');
    expect(lines[1]?.since).toContain('held again from Fri 11 Dec');
    expect(lines[2]?.since).toContain('everything upside down is held since');
  });

  it('says who said what, and how each guardian stands to it', () => {
    const [word] = wordLines(
      [
        {
          told: 'eyes',
          date: '2026-11-24',
          clinician: '',
          words: 'Fine.',
          lifts: true,
          reviewOn: '2026-12-10',
          by: 'Ines',
        },
      ],
      '2026-11-25',
    );
    expect(word?.said).toBe(
      'a clinician, Tue 24 Nov: allows it; looks again by Thu 10 Dec; recorded by Ines',
    );
    const one = { id: '1', name: 'Marta', email: null, agreedAt: null, declinedAt: null, withdrawnAt: null };
    const states = guardianLines(
      [
        { ...one, linkAt: null, openedAt: null },
        { ...one, linkAt: NOW, openedAt: null },
        { ...one, linkAt: NOW, openedAt: NOW },
        { ...one, linkAt: NOW, openedAt: NOW, agreedAt: NOW },
      ],
      'UTC',
      NOW,
    );
    expect(states.map(({ state, agreed }) => [state, agreed])).toEqual([
      ['no link made yet', false],
      ['link made Wed 10:00, not opened', false],
      ['opened the link Wed 10:00, has not decided', false],
      ['agreed Wed 10:00', true],
    ]);
  });
});
