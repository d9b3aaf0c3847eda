import { describe, expect, it } from 'vitest';
import { toldWeekAu } from '#lib/domain/intake/answers.ts';
import { agedSteps, INTAKE_STEPS, type IntakeDraft, mergeDrafts } from '#lib/domain/intake/draft.ts';
import { HEALTH_ASKED, HEALTH_LABELS, HEALTH_QUESTIONS } from '#lib/domain/intake/health-questions.ts';
import { type IntakeNow, readIntake, refusalsOf } from '#lib/domain/intake/read-intake.ts';
import { heldBy, TOLD_AT_START, toldInWords } from '#lib/domain/intake/told-at-start.ts';
import { ALL_NO, AT, aDraft } from '#tests/fixtures/intake-draft.ts';

const NOW: IntakeNow = { now: '2026-11-25T10:00:00.000Z', year: 2026, guardianNamed: false };
const fieldsOf = (draft: IntakeDraft, now: IntakeNow = NOW) => {
  const read = readIntake(draft, now);
  return 'refusals' in read ? read.refusals.map(({ field }) => field) : [];
};

describe('the intake as answers', () => {
  it('is read with the numbers as people type them', () => {
    expect(readIntake(aDraft(), NOW)).toEqual({
      answers: {
        adult: true,
        birthYear: 1990,
        bodyMassKg: 64.5,
        health: [],
        healthWords: '',
        dangerSigns: [],
        pain: [{ region: 'elbow-inner', side: 'right', value: 3, sinceWeeks: 6 }],
        week: { days: 3, minutes: 75, effort: 6 },
        breakWeeks: 0,
        otherSport: 'climbing on Sundays',
        job: 'baker',
        kit: ['rings'],
        ground: 'hard-floor',
        skills: ['Handstand'],
        goal: 'A free handstand',
        why: '',
      },
    });
  });

  it('asks for everything that nobody has answered, page by page', () => {
    const read = readIntake({}, NOW);
    if (!('refusals' in read)) throw new Error('read as whole');
    expect(new Set(read.refusals.map(({ step }) => step))).toEqual(new Set(INTAKE_STEPS));
    expect(read.refusals.filter(({ step }) => step === 'health')).toHaveLength(HEALTH_QUESTIONS.length);
    for (const { message } of read.refusals) expect(message).toMatch(/say|write|tap|choose/);
  });

  it.each([
    ['bodyMassKg', { you: { bodyMassKg: '645' } }],
    ['bodyMassKg', { you: { bodyMassKg: 'heavy' } }],
    ['birthYear', { you: { birthYear: '90' } }],
    ['birthYear', { you: { birthYear: '2024' } }],
    ['birthYear', { you: { birthYear: '1890' } }],
    ['birthYear', { you: { birthYear: '2012' } }],
    ['birthYear', { you: { adult: 'no', guardianName: 'Marta' } }],
    ['guardianName', { you: { adult: 'no', birthYear: '2012' } }],
    [
      'guardianEmail',
      { you: { adult: 'no', birthYear: '2012', guardianName: 'Marta', guardianEmail: 'marta' } },
    ],
    ['days', { week: { days: '8' } }],
    ['days', { week: { days: '2.5' } }],
    ['minutes', { week: { minutes: '6000' } }],
    ['minutes', { week: { minutes: '-5' } }],
    ['effort', { week: { effort: null } }],
    ['breakWeeks', { week: { trains: 'no', breakWeeks: '2' } }],
    ['breakWeeks', { week: { trains: 'no', breakWeeks: '1e9' } }],
    ['pain', { pain: { nothing: true } }],
    ['pain', { pain: { places: [] } }],
    [
      'pain.elbow-inner.right.sinceWeeks',
      { pain: { places: [{ region: 'elbow-inner', side: 'right', value: 3, sinceWeeks: '9999' }] } },
    ],
    [
      'pain.elbow-inner.right.value',
      { pain: { places: [{ region: 'elbow-inner', side: 'right', value: null, sinceWeeks: '1' }] } },
    ],
    ['signs', { signs: { none: false } }],
    ['ground', { kit: { ground: null } }],
    ['goal', { goals: { skills: [], goal: ' ' } }],
  ] as const)('refuses an impossible or missing %s: %j', (field, over) => {
    expect(fieldsOf(aDraft(over as Parameters<typeof aDraft>[0]))).toEqual([field]);
  });

  it('takes the year in which somebody turns 18 with either answer', () => {
    expect(fieldsOf(aDraft({ you: { birthYear: '2008' } }))).toEqual([]);
    expect(fieldsOf(aDraft({ you: { birthYear: '2008', adult: 'no', guardianName: 'Marta' } }))).toEqual([]);
    expect(
      fieldsOf(aDraft({ you: { birthYear: '2012', adult: 'no' } }), { ...NOW, guardianNamed: true }),
    ).toEqual([]);
  });

  it('keeps every yes', () => {
    const said = { ...ALL_NO, eyes: 'yes', pregnancy: 'yes' } as const;
    const read = readIntake(aDraft({ health: { said }, signs: { none: false, signs: ['chest-pain'] } }), NOW);
    expect(read).toMatchObject({ answers: { health: ['eyes', 'pregnancy'], dangerSigns: ['chest-pain'] } });
  });
});

describe('a half-filled intake', () => {
  it('a week later asks again how it is now, and keeps the rest', () => {
    const week = { ...NOW, now: '2026-12-02T10:00:00.000Z' };
    expect(agedSteps(aDraft(), week.now)).toEqual(['signs', 'pain']);
    expect(fieldsOf(aDraft(), week)).toEqual(['signs', 'pain']);
    expect(refusalsOf('pain', aDraft(), week)[0]?.message).toContain('say how it is now');
    const again = {
      ...aDraft(),
      pain: aDraft().pain && { at: week.now, page: { nothing: true, places: [] } },
    };
    expect(fieldsOf(again, week)).toEqual(['signs']);
  });

  it('is not aged on the limit of three days', () => {
    expect(agedSteps(aDraft(), '2026-11-28T09:00:00.000Z')).toEqual([]);
    expect(agedSteps(aDraft(), '2026-11-28T09:00:00.001Z')).toEqual(['signs', 'pain']);
    expect(agedSteps({}, NOW.now)).toEqual([]);
  });

  it('from two phones: of each page the later one stands, and no page is lost', () => {
    const older: IntakeDraft = {
      week: aDraft().week,
      kit: { at: AT, page: { kit: ['box'], ground: 'mat' } },
    };
    const newer: IntakeDraft = {
      kit: { at: '2026-11-25T09:30:00.000Z', page: { kit: [], ground: 'grass' } },
      goals: aDraft().goals,
    };
    const merged = mergeDrafts(older, newer);
    expect(merged).toEqual({ week: older.week, kit: newer.kit, goals: newer.goals });
    expect(mergeDrafts(newer, older)).toEqual(merged);
    expect(mergeDrafts(merged, merged)).toEqual(merged);
  });
});

it('the told usual week is days x minutes x how hard; a week without training tells nothing', () => {
  expect(toldWeekAu({ days: 3, minutes: 60, effort: 6 })).toBe(1_080);
  expect(toldWeekAu({ days: 0, minutes: 60, effort: 6 })).toBeNull();
});

it('every health question holds what is upside down, every danger sign the plan; each has its words', () => {
  for (const question of HEALTH_QUESTIONS) {
    expect(heldBy(question)).toBe('no-upside-down');
    expect(HEALTH_ASKED[question]).toMatch(/\?$/);
    expect(toldInWords(question)).toBe(HEALTH_LABELS[question]);
  }
  expect(heldBy('sign:chest-pain')).toBe('none');
  expect(toldInWords('sign:chest-pain')).toBe('chest pain');
  expect(TOLD_AT_START).toHaveLength(24);
});
