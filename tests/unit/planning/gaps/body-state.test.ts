import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { bodyStateOf } from '#lib/planning/gaps/body-state.ts';
import {
  aCheckIn,
  aHistory,
  aPain,
  aRung,
  evening,
  sets,
  threeAWeek,
} from '#tests/fixtures/history-builders.ts';

const stateOn = (checkIns: HistoryCheckIn[], night: number) =>
  bodyStateOf(buildView(aHistory({ checkIns, rungs: [aRung()] }), evening(night)), DEFAULT_LIMITS);

describe('pain', () => {
  const told = (over: Parameters<typeof aPain>[1], value = 4) =>
    stateOn(
      [aCheckIn(0, { pain: [aPain(value, { region: 'wrist-back', side: 'left', kind: 'joint', ...over })] })],
      5,
    );
  it('of a joint, on its side, with where it was told', () => {
    expect(told({}).get('wrist-back:left')).toEqual({ pain: 4, where: 'left wrist, back', overUsual: 0 });
    expect(told({}).get('wrist-back:right')).toBeUndefined();
  });
  it('in the middle counts on both sides', () => {
    const neck = told({ region: 'neck', side: 'middle' });
    expect([neck.get('neck:left')?.pain, neck.get('neck:right')?.pain]).toEqual([4, 4]);
  });
  it('a sore muscle, a 0 and what is longer ago than 14 days are no pain here', () => {
    expect(told({ kind: 'muscle' }).size).toBe(0);
    expect(told({}, 0).size).toBe(0);
    const old = [aCheckIn(0, { pain: [aPain(4, { region: 'wrist-back', side: 'left', kind: 'joint' })] })];
    expect(stateOn(old, 13).size).toBe(1);
    expect(stateOn(old, 14).size).toBe(0);
  });
});

it('a week of load over the usual one counts from a tenth on', () => {
  const weeks = (last: number) => {
    const checkIns = threeAWeek(11, (days, session) => {
      const values = Array.from({ length: session >= 30 ? last : 10 }, () => 10);
      return aCheckIn(days, { sets: sets(values, { rungId: aRung().id }) });
    });
    return Math.max(0, ...[...stateOn(checkIns, 76).values()].map(({ overUsual }) => overUsual));
  };
  expect(weeks(10)).toBe(0);
  expect(weeks(15)).toBeCloseTo(0.5, 6);
});
