import { describe, expect, it } from 'vitest';
import type { SinceOutcome } from '#lib/checks/better-since/types.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { countOutcomes, countsSaid } from '#lib/views/steps/count-outcomes.ts';
import { NO_TRIAL, overviewInWords } from '#lib/views/steps/overview-words.ts';
import { daysOfPeriod } from '#lib/views/steps/step-period.ts';
import { allOverOn, type Followed, stepsOverview } from '#lib/views/steps/steps-overview.ts';

const TODAY = '2026-11-26';
let made = 0;

function followed(
  reasonKind: CheckKind | null,
  told: [windowDays: number, outcome: SinceOutcome, changes?: string[]][],
  over: Partial<Followed> = {},
): Followed {
  made += 1;
  return {
    id: `f-${made}`,
    clientId: `c-${made}`,
    clientName: `Client ${made}`,
    reasonKind,
    stepKind: 'one-rung-back',
    from: '2026-10-08',
    told: told.map(([windowDays, outcome, changes = []]) => ({ windowDays, outcome, evidence: { changes } })),
    ...over,
  };
}

describe('counts', () => {
  const of = (better: number, same: number, worse: number, unknown = 0) =>
    countsSaid(
      countOutcomes([
        ...Array<SinceOutcome>(better).fill('better'),
        ...Array<SinceOutcome>(same).fill('same'),
        ...Array<SinceOutcome>(worse).fill('worse'),
        ...Array<SinceOutcome>(unknown).fill('not-known'),
      ]),
    );
  it('are without percentages under ten that are known, however many there are', () => {
    expect(of(5, 3, 1, 4)).toMatchObject({ n: 13, better: '5', same: '3', worse: '1', 'not-known': '4' });
  });
  it('have a share of the known ones from ten on', () => {
    expect(of(5, 3, 2, 10)).toMatchObject({ n: 20, better: '5, 50 %', same: '3, 30 %', 'not-known': '10' });
  });
});

describe('the overview', () => {
  const steps = [
    followed(
      'stalled',
      [
        [28, 'same'],
        [42, 'better', ['plan version 3 from Thu 15 Oct']],
      ],
      { clientName: 'Ada' },
    ),
    followed('stalled', [[28, 'worse']], { clientName: 'Bo' }),
    followed('pain-rising', [], { stepKind: 'cut-volume' }),
    followed('step-up-earned', [], { stepKind: 'step-up' }),
    followed(null, [], { stepKind: 'answer' }),
  ];
  const alone = [
    followed('stalled', [
      [28, 'better'],
      [42, 'better'],
    ]),
    followed('pain-rising', [[7, 'better']], { stepKind: 'cut-volume' }),
  ];
  const overview = stepsOverview({ steps, alone, today: TODAY });
  const row = (key: string) => overview.byReason.find((one) => one.key === key);

  it('counts each window apart by kind of reason, with what is still to come', () => {
    expect(row('stalled 28')).toMatchObject({
      title: 'Stalled, after 28 days',
      taken: { n: 2, better: '0', same: '1', worse: '1', 'not-yet': '0' },
      alone: { n: 1, better: '1' },
    });
    expect(row('stalled 42')).toMatchObject({
      taken: { n: 2, better: '1', 'not-yet': '1' },
      alone: { n: 1 },
    });
    expect(row('pain-rising 7')).toMatchObject({ taken: { n: 1, 'not-yet': '1' }, alone: { n: 1 } });
    expect(row('pain-rising 14')).toMatchObject({ taken: { n: 1, 'not-yet': '1' }, alone: { n: 0 } });
    expect(row('step-up-earned 28')).toBeUndefined();
  });
  it('counts each step once by its kind, with its longest window that is over', () => {
    const [back, volume] = ['one-rung-back', 'cut-volume'].map((key) =>
      overview.byStep.find((one) => one.key === key),
    );
    expect(back).toMatchObject({ taken: { n: 2, better: '1', worse: '1' }, alone: { n: 1, better: '1' } });
    expect(volume).toMatchObject({ taken: { n: 1, 'not-yet': '1' }, alone: { n: 1, better: '1' } });
    expect(overview.taken).toMatchObject({ n: 3, better: 1, worse: 1, 'not-yet': 1 });
  });
  it('names who, and says two changes', () => {
    const who = row('stalled 42')?.who.map((group) => ({
      words: group.words,
      people: group.people.map(
        (person) => `${person.name}, ${person.when}${person.besides ? ', two changes' : ''}`,
      ),
    }));
    expect(who).toEqual([
      { words: 'better', people: ['Ada, Thu 8 Oct, two changes'] },
      { words: 'not yet', people: ['Bo, Thu 8 Oct'] },
    ]);
    expect(overview.besides).toBe(1);
  });
  it('says what was taken and is not followed', () => {
    expect(overview.notFollowed).toBe('step up 1, answered 1');
  });
  it('answers in words with every count, and never says that it helped', () => {
    const words = overviewInWords(overview);
    expect(words).toEqual([
      '3 steps of 3 clients are followed. Since then, at the end of the longest window that is over: better 1, the same 0, worse 1, not yet over 1.',
      'Nothing was done about 2 reasons of the same days: better 2, the same 0, worse 0.',
      'In the weeks of 1 of the answered steps something else changed too, so it cannot be told apart.',
    ]);
    expect(`${words.join(' ')} ${NO_TRIAL}`).not.toMatch(/helped|because of the step|!/);
    expect(NO_TRIAL).toContain('our own simulation');
  });
  it('says nothing of nothing', () => {
    expect(overviewInWords(stepsOverview({ steps: [], alone: [], today: TODAY }))).toEqual([]);
  });
});

it.each([
  ['last-month', '2026-10-01', '2026-10-31'],
  ['this-month', '2026-11-01', '2026-11-26'],
  ['quarter', '2026-08-29', '2026-11-26'],
  ['year', '2025-11-27', '2026-11-26'],
] as const)('%s is %s to %s', (period, from, to) => {
  expect(daysOfPeriod(period, TODAY)).toEqual({ from, to });
});

it('the month before January is December of the year before', () => {
  expect(daysOfPeriod('last-month', '2027-01-03')).toEqual({ from: '2026-12-01', to: '2026-12-31' });
});

it('the last answer comes when the longest window of all is over', () => {
  expect(allOverOn('2026-10-31')).toBe('2026-12-26');
});
