import { expect, it } from 'vitest';
import { isUnderLimit } from '#lib/checks/limits-on-rung.ts';
import { plansThatHeld } from '#lib/checks/plans-that-held.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { aHistory, aPlan, aRung, day, evening } from '#tests/fixtures/history-builders.ts';

// Versions 2 to 4 cut the volume and give it back in steps; version 5 was written before the last step began.
const STAGES = [
  aPlan({ version: 1, from: day(0) }),
  aPlan({ version: 2, from: day(10) }),
  aPlan({ version: 3, from: day(17) }),
  aPlan({ version: 4, from: day(24) }),
  aPlan({ version: 5, from: day(20) }),
];

it('leaves out a version that a later one overtook before its first day', () => {
  const versions = plansThatHeld(STAGES).map(({ version }) => version);
  expect(versions).toEqual([1, 2, 3, 5]);
  expect(plansThatHeld([...STAGES].reverse()).map(({ version }) => version)).toEqual(versions);
});

it('holds the highest version that has begun, as the phone does', () => {
  const view = buildView(aHistory({ plans: STAGES }), evening(30), DEFAULT_LIMITS);
  const held = [9, 10, 17, 19, 20, 24, 30].map((days) => view.planOn(day(days))?.version);
  expect(held).toEqual([1, 2, 3, 3, 5, 5, 5]);
});

it('of two versions from one day the later holds', () => {
  const twice = [aPlan({ version: 2, from: day(3) }), aPlan({ version: 1, from: day(3) })];
  expect(plansThatHeld(twice).map(({ version }) => version)).toEqual([2]);
});

it('a limit on one side says nothing about what the other side does alone', () => {
  const limit = (side: HistoryLimit['side']): HistoryLimit => ({
    tissue: 'elbow-bending',
    region: null,
    side,
    rule: 'reduced',
    percent: 50,
    from: day(0),
    until: null,
    who: 'physiotherapist',
  });
  const rung = aRung({ weights: { 'elbow-bending': 0.8 } });
  const under = (limited: HistoryLimit['side'], side: 'both' | 'left' | 'right') => {
    const view = buildView(aHistory({ limits: [limit(limited)] }), evening(5), DEFAULT_LIMITS);
    return isUnderLimit(view, { rung, side }, day(3), DEFAULT_LIMITS);
  };
  expect([under('left', 'left'), under('left', 'right'), under('left', 'both')]).toEqual([true, false, true]);
  expect([under('right', 'left'), under('right', 'right'), under('right', 'both')]).toEqual([
    false,
    true,
    true,
  ]);
  expect(under(null, 'right')).toBe(true);
});
