import { describe, expect, it } from 'vitest';
import { noLetUp } from '#lib/checks/rules/no-let-up.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPlan, aRestDay, sets, threeAWeek } from '#tests/fixtures/history-builders.ts';

const WEEKS = 10;
const before = threeAWeek(WEEKS); // to day 67, 300 AU a session
const every = (count: number, make: (days: number) => HistoryCheckIn = (days) => aCheckIn(days)) =>
  Array.from({ length: count }, (_, index) => make(70 + index));
const sayOf = (checkIns: HistoryCheckIn[], last: number, over: Parameters<typeof aHistory>[0] = {}) =>
  said(theOutcome(judge(noLetUp, aHistory({ checkIns, ...over }), last)));

// Six planned sessions a week, so that the rule of days all alike keeps out of the way.
const SIX = { plans: [aPlan({ sessionsPerWeek: 6 })] };

describe('no-let-up: no rest day', () => {
  it.each([
    [13, 'clear'],
    [14, 'flagged watch'],
  ])('%i training days in a row give %s', (count, expected) => {
    expect(sayOf([...before, ...every(count)], 69 + count, SIX)).toBe(expected);
  });
  it('takes a day of at most a third of the median for rest', () => {
    const light = (minutes: number) => every(14, (days) => aCheckIn(days, days === 76 ? { minutes } : {}));
    expect(sayOf([...before, ...light(20)], 83, SIX)).toBe('clear');
    expect(sayOf([...before, ...light(21)], 83, SIX)).toBe('flagged watch');
  });
  it('is 7 days under 18, from the first week on', () => {
    const first = (count: number) => Array.from({ length: count }, (_, days) => aCheckIn(days));
    const young = { client: { under18: true }, ...SIX };
    expect(sayOf(first(7), 6, young)).toBe('flagged watch');
    expect(sayOf(first(6), 5, young)).toMatch(/^not-enough-history/);
    expect(sayOf(first(7), 6, SIX)).toBe('not-enough-history: 7 of 28 days known');
  });
  it('never counts a day nobody knows of', () => {
    const gap = every(15).filter((_, index) => index !== 7);
    expect(sayOf([...before, ...gap], 84, SIX)).toBe('clear');
  });
});

describe('no-let-up: hard days back to back', () => {
  // Hard: 1.2 x the tissue's and 1.25 x the session's median. 400 AU of 300, 6 sets of 3.
  const hard = (days: number) => aCheckIn(days, { minutes: 80, sets: sets([5, 5, 5, 5, 5, 5]) });
  it('speaks at two pairs in 14 days, not at one', () => {
    expect(sayOf([...before, hard(72), hard(73), aRestDay(75), hard(77), hard(78)], 79, SIX)).toBe(
      'flagged watch',
    );
    expect(sayOf([...before, hard(72), hard(73), aRestDay(75), hard(78)], 79, SIX)).toBe(
      'clear, lower bound',
    );
  });
  it('needs the session and the tissue to be hard', () => {
    const long = (days: number) => aCheckIn(days, { minutes: 80 });
    expect(sayOf([...before, long(72), long(73), long(77), long(78)], 78, SIX)).toBe('clear');
  });
});

describe('no-let-up: what was not told', () => {
  const hard = (days: number) => aCheckIn(days, { minutes: 80, sets: sets([5, 5, 5, 5, 5, 5]) });
  const pairs = (over: Partial<HistoryCheckIn>) => [
    ...before,
    hard(72),
    hard(73),
    aRestDay(75),
    hard(77),
    { ...hard(78), ...over },
    aRestDay(79),
  ];
  it('clears nothing: an effort or minutes left out', () => {
    expect(sayOf(pairs({}), 79, SIX)).toBe('flagged watch');
    expect(sayOf(pairs({ effort: null }), 79, SIX)).toBe('clear, lower bound');
    expect(sayOf(pairs({ minutes: null }), 79, SIX)).toBe('clear, lower bound');
    expect(sayOf(pairs({ effort: 1 }), 79, SIX)).toBe('clear');
  });
  it('is looked for in 14 days', () => {
    const later = [aRestDay(81), aRestDay(84), aRestDay(87), aRestDay(91)];
    expect(sayOf([...pairs({ effort: null }), ...later], 91, SIX)).toBe('clear, lower bound');
    expect(sayOf([...pairs({ effort: null }), ...later, aRestDay(92)], 92, SIX)).toBe('clear');
  });
});

describe('no-let-up: days all alike', () => {
  // Ten days of 150 AU or 200 AU: monotony over 2; the week is 1,250 AU of 900.
  const alike = every(10, (days) => aCheckIn(days, { minutes: days % 2 === 0 ? 30 : 40 }));
  const plans = [aPlan({ sessionsPerWeek: 5 })];
  it('speaks where the load is over usual, and says the monotony', () => {
    const finding = theFinding(judge(noLetUp, aHistory({ checkIns: [...before, ...alike], plans }), 79));
    expect(finding.sentence).toContain('10 days much alike');
    expect(finding.evidence.monotony).toBe('7');
  });
  it('is silent for plans of six days and more, and while the load is usual', () => {
    expect(sayOf([...before, ...alike], 79, SIX)).toBe('clear');
    // 7 days of 1,080 AU are 1.2 x usual, 1,095 are over it.
    const week = (even: number) =>
      every(10, (days) => aCheckIn(days, { minutes: days % 2 === 0 ? even : 33 }));
    expect(sayOf([...before, ...week(28)], 79, { plans })).toBe('clear');
    expect(sayOf([...before, ...week(29)], 79, { plans })).toBe('flagged watch');
    const little = every(10, (days) => aCheckIn(days, { minutes: 20 + (days % 2) }));
    expect(sayOf([...before, ...little], 79, { plans })).toBe('clear');
  });
});

describe('no-let-up on its limits', () => {
  const hard = (days: number) => aCheckIn(days, { minutes: 80, sets: sets([5, 5, 5, 5, 5, 5]) });
  const pairs = aHistory({ checkIns: [...before, hard(72), hard(73), hard(77), hard(78)], ...SIX });
  const alike = every(10, (days) => aCheckIn(days, { minutes: days % 2 === 0 ? 30 : 40 }));
  const days = aHistory({ checkIns: [...before, ...alike], plans: [aPlan({ sessionsPerWeek: 5 })] });
  // Sessions 400 AU of 300 and 6 sets of 3; monotony 175 / 25; the last 7 days 1,250 AU of 900.
  it.each([
    ['noLetUp.hardSession', pairs, 78, 4 / 3],
    ['noLetUp.hardTissue', pairs, 78, 2],
    ['noLetUp.monotony', days, 79, 7],
    ['noLetUp.monotonyLoad', days, 79, 1_250 / 900],
  ] as const)('%s has to be exceeded', (id, history, last, limit) => {
    expect(theOutcome(judge(noLetUp, history, last, { [id]: limit })).status).toBe('clear');
    expect(theOutcome(judge(noLetUp, history, last, { [id]: limit - 0.001 })).status).toBe('flagged');
  });
  it('needs enough training days for a median', () => {
    const spoken = (limit: number) =>
      theOutcome(judge(noLetUp, pairs, 78, { 'noLetUp.daysAtLeast': limit })).status;
    // 8 weeks before the fortnight, days 9 to 64: 24 training days.
    expect(spoken(24)).toBe('flagged');
    expect(spoken(25)).toBe('clear');
  });
});
