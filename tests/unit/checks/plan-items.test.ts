import { describe, expect, it } from 'vitest';
import { asksPassMark, lastPlanChange, plannedSince } from '#lib/checks/plan-items.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryPlan } from '#lib/domain/history.ts';
import { aHistory, aPlan, aPlanItem, aRung, day, evening } from '#tests/fixtures/history-builders.ts';

const viewOf = (plans: HistoryPlan[], days: number) => buildView(aHistory({ plans }), evening(days));
const from = (days: number, version: number, over: Partial<HistoryPlan> = {}) =>
  aPlan({ version, from: day(days), ...over });

describe('what a plan asks', () => {
  it('is the pass mark with all its sets and its target, or more', () => {
    // Pass mark: 3 sets of 5.
    const asks = (sets: number, target: number | null) => asksPassMark(aPlanItem({ sets, target }), aRung());
    expect(asks(3, 5)).toBe(true);
    expect(asks(4, 6)).toBe(true);
    expect(asks(2, 5)).toBe(false);
    expect(asks(3, 4)).toBe(false);
    expect(asks(3, null)).toBe(false);
  });
  it('is the pass mark of a range in which less is better with the target or less', () => {
    const rung = aRung({ measure: 'range-down', pass: { sets: 1, target: 10, days: 2, tries: null } });
    const asks = (target: number) => asksPassMark(aPlanItem({ sets: 1, target }), rung);
    expect([9, 10, 11].map(asks)).toEqual([true, true, false]);
  });
});

describe('since when the plans have a rung', () => {
  const since = (plans: HistoryPlan[], days: number) =>
    plannedSince(viewOf(plans, days), 'pull-1', day(days));
  const plans = [from(0, 1), from(20, 2, { items: [] }), from(30, 3), from(40, 4)];
  it('is the first day of those without a break that have it', () => {
    expect(since(plans, 50)).toBe(day(30));
    expect(since(plans, 19)).toBe(day(0));
    expect(since(plans, 20)).toBeUndefined();
  });
  it('counts a plan from its first day on', () => {
    expect(since(plans, 29)).toBeUndefined();
    expect(since(plans, 30)).toBe(day(30));
  });
  it('goes by the later version of two that start on one day, whatever their order', () => {
    const two = [from(0, 1), from(10, 3, { items: [] }), from(10, 2)];
    expect(since(two, 12)).toBeUndefined();
    expect(since([...two].reverse(), 12)).toBeUndefined();
  });
});

describe('the last change of what the plans ask on a ladder', () => {
  const changed = (plans: HistoryPlan[], days: number) => lastPlanChange(viewOf(plans, days), 'pull');
  const more = { items: [aPlanItem({ sets: 4 })] };
  it('is the first day of the plan that asks something else, on that day too', () => {
    const plans = [from(0, 1), from(10, 2), from(20, 3, more), from(30, 4, more)];
    expect(changed(plans, 40)).toBe(day(20));
    expect(changed(plans, 20)).toBe(day(20));
    expect(changed(plans, 19)).toBeUndefined();
  });
  it('is none where only other ladders changed', () => {
    const other = { items: [aPlanItem(), aPlanItem({ rungId: 'stand-1', sets: 4 })] };
    expect(changed([from(0, 1), from(10, 2, other)], 20)).toBeUndefined();
  });
});
