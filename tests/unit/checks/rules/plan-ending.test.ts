import { describe, expect, it } from 'vitest';
import { planEnding } from '#lib/checks/rules/plan-ending.ts';
import { judge } from '#tests/fixtures/check-client.ts';
import { aHistory, aPlan, day, threeAWeek } from '#tests/fixtures/history-builders.ts';

const flagged = (until: string | null, days = 30) =>
  judge(planEnding, aHistory({ checkIns: threeAWeek(4), plans: [aPlan({ until })] }), days).filter(
    (outcome) => outcome.status === 'flagged',
  );

// Last planned day within 7 days: this week; none left: today. Common practice, no source.
describe('plan-ending', () => {
  it.each([
    [day(60), 'none'],
    [day(38), 'none'],
    [day(37), 'this-week'],
    [day(31), 'this-week'],
    [day(30), 'today'],
    [day(20), 'today'],
  ])('a plan until %s, seen on day 30, gives %s', (until, tier) => {
    expect(flagged(until)[0]?.tier ?? 'none').toBe(tier);
  });
  it('never ends when it has no last day', () => {
    expect(flagged(null)).toEqual([]);
  });
});
