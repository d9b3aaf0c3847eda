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
  // The plan in force until day 33, and what was written beside it, in either order.
  it.each([
    ['a next plan without an end', aPlan({ version: 2, from: day(34) }), 'none'],
    ['a next plan to day 60', aPlan({ version: 2, from: day(34), until: day(60) }), 'none'],
    ['a next plan to day 36', aPlan({ version: 2, from: day(34), until: day(36) }), `plan ends Tue 7 Apr`],
    ['an older plan without an end', aPlan({ version: 0, from: day(-7) }), 'plan ends Sat 4 Apr'],
    [
      'a later version from an earlier day, which holds instead',
      aPlan({ version: 2, from: day(-7) }),
      'none',
    ],
    [
      'an earlier version from a later day, which never holds',
      aPlan({ version: 0, from: day(34) }),
      'plan ends Sat 4 Apr',
    ],
    ['a later version from the same day without an end', aPlan({ version: 2 }), 'none'],
    [
      'a later version from the same day to day 36',
      aPlan({ version: 2, until: day(36) }),
      'plan ends Tue 7 Apr',
    ],
    ['an earlier version from the same day without an end', aPlan({ version: 0 }), 'plan ends Sat 4 Apr'],
  ])('with %s', (_, beside, expected) => {
    const plan = aPlan({ version: 1, until: day(33) });
    for (const plans of [
      [plan, beside],
      [beside, plan],
    ]) {
      const [outcome] = judge(planEnding, aHistory({ checkIns: threeAWeek(4), plans }), 30);
      expect(outcome?.status === 'flagged' ? outcome.short : 'none').toBe(expected);
    }
  });
  it('never ends when it has no last day', () => {
    expect(flagged(null)).toEqual([]);
  });
});
