import { expect, test } from 'vitest';
import { limitsWith } from '#lib/checks/thresholds.ts';
import { timeToGoal } from '#lib/checks/time-to-goal.ts';
import { updatedBelief } from '#lib/stats/normal-inverse-chi-square.ts';

test('midge wings: Hoff 2009, A First Course in Bayesian Statistical Methods, 5.3 (posterior from memory)', () => {
  const wings = [1.64, 1.7, 1.72, 1.74, 1.82, 1.82, 1.82, 1.9, 2.08];
  const belief = updatedBelief({ mean: 1.9, meanCount: 1, variance: 0.01, varianceCount: 1 }, wings);
  expect(belief).toMatchObject({ meanCount: 10, varianceCount: 10 });
  expect(belief.mean).toBeCloseTo(1.814, 12);
  expect(belief.variance).toBeCloseTo(0.015324, 6);
});

/** Prior: ln 3 worth 2 rungs, variance 0.25 worth 4; rungs of 2, 3 and 5 weeks. */
const LIMITS = limitsWith({
  'forecast.spreadWithin': 0.5,
  'forecast.spreadBetween': 0.5 / Math.SQRT2,
  'forecast.spreadWorth': 4,
  'forecast.draws': 100_000,
});
const PASSED = [2, 3, 5].map((days) => ({ days, usualDays: 3 }));
const ask = (passed: typeof PASSED, ahead: number[]) =>
  timeToGoal({ seed: 'check', passed, now: { days: 0, usualDays: 3 }, ahead }, LIMITS);

test('posterior of three times on a rung: own closed form, checked with SciPy 1.17.1', () => {
  const logs = [2, 3, 5].map(Math.log);
  const belief = updatedBelief({ mean: Math.log(3), meanCount: 2, variance: 0.25, varianceCount: 4 }, logs);
  expect(belief.mean).toBeCloseTo(1.1196843918, 9);
  expect(belief.variance).toBeCloseTo(0.2033035149, 9);
});

/** Tolerance: four standard errors of a quantile of 100,000 draws, under 2 % of it here. */
test.each([
  ['the next rung', PASSED, [], [1.5232, 3.06389, 6.16294]],
  ['the next rung, nothing passed: 3 exp(+-1.28155 x 0.61237), by hand', [], [], [1.36868, 3, 6.57571]],
  ['three rungs with one pace', PASSED, [3, 3], [6.25, 9.894, 16.359]],
])(
  '%s: 10, 50 and 90 %% by closed form (SciPy) or a million other draws',
  (_name, passed, ahead, expected) => {
    const { early, middle, late } = ask(passed, ahead);
    [early, middle, late].forEach((value, index) => {
      expect(Math.abs(value / (expected[index] ?? 0) - 1)).toBeLessThan(0.02);
    });
  },
);
