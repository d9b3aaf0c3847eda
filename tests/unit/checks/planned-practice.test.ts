import { describe, expect, it } from 'vitest';
import { isHardlyTrained, plannedPractice } from '#lib/checks/planned-practice.ts';
import { standingsOf } from '#lib/checks/standings.ts';
import { DEFAULT_LIMITS, type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { aCheckIn, aHistory, aPlan, aPlanItem, day, evening } from '#tests/fixtures/history-builders.ts';

const viewOf = (checkIns: HistoryCheckIn[], days: number, over: Parameters<typeof aHistory>[0] = {}) =>
  buildView(aHistory({ checkIns, ...over }), evening(days));
const countedIn = (view: ReturnType<typeof viewOf>, limits: Limits = DEFAULT_LIMITS) => {
  const [standing] = standingsOf(view);
  if (!standing) throw new Error('nobody stands anywhere');
  const { planned, trained, logged } = plannedPractice(view, standing, limits);
  return `${trained} of ${planned} planned, ${logged} logged`;
};
const counted = (...view: Parameters<typeof viewOf>) => countedIn(viewOf(...view));
const trained = (...days: number[]) => days.map((each) => aCheckIn(each));
const without = (...days: number[]) => days.map((each) => aCheckIn(each, { sets: [] }));

describe('sessions that have a rung in the plan', () => {
  it('are those of 28 days, the day of the last session with them', () => {
    expect(counted(trained(12, 13, 20, 39), 45)).toBe('4 of 4 planned, 4 logged');
    expect(counted(trained(12, 13, 20, 40), 45)).toBe('3 of 3 planned, 3 logged');
    expect(counted([...without(13), ...trained(12, 20, 40)], 45)).toBe('2 of 3 planned, 3 logged');
  });
  it('count from the eighth day of the plan on', () => {
    expect(counted(trained(6, 7, 8), 10)).toBe('2 of 2 planned, 3 logged');
  });
  it('are asked of the plan that was in force on their day', () => {
    const plans = [
      aPlan({ until: day(19) }),
      aPlan({ version: 2, from: day(20), items: [aPlanItem({ session: 'B' })] }),
    ];
    const checkIns = [...trained(10, 12, 22, 24), aCheckIn(26, { session: 'B' })];
    expect(counted(checkIns, 30, { plans })).toBe('3 of 3 planned, 5 logged');
  });
  it('change with the limits of a team, for one client seen once', () => {
    const view = viewOf(trained(6, 7, 8), 10);
    expect(countedIn(view)).toBe('2 of 2 planned, 3 logged');
    expect(countedIn(view, limitsWith({ 'tooLittleTime.planFromDays': 6 }))).toBe('3 of 3 planned, 3 logged');
    expect(countedIn(view, limitsWith({ 'tooLittleTime.days': 2 }))).toBe('2 of 2 planned, 2 logged');
    expect(countedIn(view)).toBe('2 of 2 planned, 3 logged');
  });
  it('are none in a plan that asks nothing, also from its first day and without a name of the session', () => {
    const view = viewOf([aCheckIn(10, { session: null })], 12, { plans: [aPlan({ items: [] })] });
    expect(countedIn(view, limitsWith({ 'tooLittleTime.planFromDays': 0 }))).toBe('0 of 0 planned, 1 logged');
  });
});

describe('hardly trained', () => {
  const hardly = (done: number, planned: number) =>
    isHardlyTrained({ trained: done, planned, logged: planned }, DEFAULT_LIMITS);
  it('is under half of the sessions that have it', () => {
    expect(hardly(2, 5)).toBe(true);
    expect(hardly(2, 4)).toBe(false);
  });
  it('is nothing the plan does not ask for', () => {
    expect(hardly(0, 0)).toBe(false);
  });
});
