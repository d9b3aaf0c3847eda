import { describe, expect, it } from 'vitest';
import { noLetUp } from '#lib/checks/rules/no-let-up.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPlan, aRestDay, sets, threeAWeek } from '#tests/fixtures/history-builders.ts';

const before = threeAWeek(10); // to day 67, 300 AU a session
const SIX = { plans: [aPlan({ sessionsPerWeek: 6 })] };
const FIVE = { plans: [aPlan({ sessionsPerWeek: 5 })] };
const judged = (checkIns: HistoryCheckIn[], last: number, over: Parameters<typeof aHistory>[0] = {}) =>
  judge(noLetUp, aHistory({ checkIns, ...over }), last);

describe('what there is no let-up from', () => {
  const hard = (days: number) => aCheckIn(days, { minutes: 80, sets: sets([5, 5, 5, 5, 5, 5]) });
  it('is said of the first tissue by name, where two were hard on the same days', () => {
    const checkIns = [...before, hard(72), hard(73), aRestDay(75), hard(77), hard(78)];
    const finding = theFinding(judged(checkIns, 78, SIX));
    expect(finding.sentence).toContain(
      '**hard days back to back 2 times** in 14 days, for elbow, bending side; since',
    );
    expect(finding.evidence).toEqual({ hardPairs: 2, tissues: 'elbow-bending' });
  });
  it('is days of one load, said as such: no monotony can be worked out', () => {
    const alike = Array.from({ length: 10 }, (_, index) => aCheckIn(70 + index, { minutes: 35 }));
    const finding = theFinding(judged([...before, ...alike], 79, FIVE));
    expect(finding.sentence).toContain('**10 days much alike** (monotony every day the same)');
  });
  it('is not seen in days alike of which one is not known', () => {
    const alike = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9].map((index) =>
      aCheckIn(70 + index, index === 1 ? { effort: null } : { minutes: 35 }),
    );
    expect(said(theOutcome(judged([...before, ...alike], 79, FIVE)))).toBe('clear, lower bound');
  });
  it('takes the newest training day into the median that makes a day light', () => {
    // Seven days, four of them 310 AU: light is up to 103 AU, 20 minutes are 100 and 21 are 105.
    const week = (light: number) =>
      [62, 62, 62, light, light, light, 62].map((minutes, index) => aCheckIn(index, { minutes }));
    const young = (light: number) =>
      said(theOutcome(judged(week(light), 6, { client: { under18: true }, ...SIX })));
    expect(young(20)).toMatch(/^not-enough-history/);
    expect(young(21)).toBe('flagged watch');
  });
});
