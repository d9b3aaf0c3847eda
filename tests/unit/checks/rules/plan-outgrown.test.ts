import { describe, expect, it } from 'vitest';
import { planOutgrown } from '#lib/checks/rules/plan-outgrown.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPlan, aPlanItem, day, sets } from '#tests/fixtures/history-builders.ts';

const ASKS_LESS = [aPlan({ items: [aPlanItem({ target: 4 })] })];
const done = (days: number, over = {}) => aCheckIn(days, { sets: sets([4, 4, 5], { planned: 4 }), ...over });
const THREE = [done(0), done(2), done(4)];
const saidOf = (checkIns: HistoryCheckIn[], over = {}) =>
  said(theOutcome(judge(planOutgrown, aHistory({ checkIns, plans: ASKS_LESS, ...over }), 20)));

describe('plan-outgrown', () => {
  it('speaks after three days with ease', () => {
    const finding = theFinding(judge(planOutgrown, aHistory({ checkIns: THREE, plans: ASKS_LESS }), 5));
    expect(finding).toMatchObject({
      level: 'watch',
      tier: 'this-week',
      evidence: { days: 3, highestEffort: 5, target: 4 },
    });
    expect(finding.sentence).toContain('the plan asks 3 × 4, the pass mark is 3 × 5.');
  });
  it('needs three days under this plan', () => {
    expect(saidOf(THREE.slice(1))).toBe('not-enough-history: 2 of 3 training days under this plan');
    const plans = [
      aPlan({ items: [aPlanItem({ target: 3 })] }),
      aPlan({ version: 2, from: day(1), items: [aPlanItem({ target: 4 })] }),
    ];
    expect(saidOf(THREE, { plans })).toContain('2 of 3');
  });
  it('draws the line at effort 6', () => {
    expect(saidOf([done(0), done(2), done(4, { effort: 6 })])).toBe('flagged watch');
    expect(saidOf([done(0), done(2), done(4, { effort: 7 })])).toBe('clear');
  });
  it('does not take an effort that was not told for a hard day', () => {
    const untold = done(4, { effort: null });
    expect(saidOf([done(0), done(2), untold])).toBe(
      'not-enough-history: effort known on 2 of 3 training days',
    );
    expect(saidOf([done(0), done(2, { effort: 7 }), untold])).toBe('clear');
  });
  it('wants every planned set, clean, on days running', () => {
    expect(saidOf([done(0), done(2), aCheckIn(4, { sets: sets([4, 4, 3], { planned: 4 }) })])).toBe('clear');
    expect(
      saidOf([done(0), done(2), aCheckIn(4, { sets: sets([4, 4, 4], { planned: 4, clean: false }) })]),
    ).toBe('clear');
    expect(saidOf([done(0), done(2), aCheckIn(4, { sets: sets([4, 4], { planned: 4 }) })])).toBe('clear');
    const missed = aCheckIn(3, { sets: sets([4, 4, 2], { planned: 4 }) });
    expect(saidOf([done(0), done(2), missed, done(5), done(7)])).toBe('clear');
  });
  it('is silent when the plan asks the pass mark, or has no sets of it', () => {
    expect(saidOf(THREE, { plans: [aPlan()] })).toBe('clear');
    expect(saidOf(THREE, { plans: [aPlan({ items: [aPlanItem({ sets: 2 })] })] })).toBe('flagged watch');
    expect(saidOf(THREE, { plans: [] })).toBe('clear');
  });
  it('does not count days only tapped', () => {
    const tapped = (days: number) =>
      aCheckIn(days, { sets: sets([4, 4, 4], { planned: 4, how: 'as-planned' }) });
    expect(saidOf([done(0), done(2), tapped(4)])).toContain('2 of 3');
  });
  it('looks at planned sets only, on the side it is about', () => {
    const beyond = (days: number) =>
      aCheckIn(days, {
        sets: [...sets([4, 4, 4], { planned: 4 }), ...sets([1], { planned: null, index: 3 })],
      });
    expect(saidOf([beyond(0), beyond(2), beyond(4)])).toBe('flagged watch');
    const placements = [{ ladderId: 'pull', side: 'left' as const, rungId: 'pull-1', from: day(0) }];
    const sides = (days: number) =>
      aCheckIn(days, {
        sets: [
          ...sets([4, 4, 4], { planned: 4, side: 'left' }),
          ...sets([1, 1, 1], { planned: 4, side: 'right' }),
        ],
      });
    expect(saidOf([sides(0), sides(2), sides(4)], { placements })).toBe('flagged watch');
  });
  it('counts the day of a change and of the placement', () => {
    const from = (days: number) => [
      { ladderId: 'pull', side: 'both' as const, rungId: 'pull-1', from: day(days) },
    ];
    const two = [done(2), done(4), done(6)];
    expect(saidOf(two, { placements: from(2) })).toBe('flagged watch');
    expect(saidOf(two, { placements: from(3) })).toContain('2 of 3');
    const plans = (days: number) => [
      aPlan({ items: [aPlanItem({ target: 3 })] }),
      aPlan({ version: 2, from: day(days), items: [aPlanItem({ target: 4 })] }),
    ];
    expect(saidOf(two, { plans: plans(2) })).toBe('flagged watch');
    expect(saidOf(two, { plans: plans(3) })).toContain('2 of 3');
  });
  it('names the session that asks least, whatever the order of the plan', () => {
    const items = [aPlanItem({ target: 4 }), aPlanItem({ session: 'B', sets: 2, target: 4 })];
    for (const each of [items, [...items].reverse()]) {
      const history = aHistory({ checkIns: THREE, plans: [aPlan({ items: each })] });
      expect(theFinding(judge(planOutgrown, history, 5)).sentence).toContain('the plan asks 2 × 4,');
    }
  });
});
