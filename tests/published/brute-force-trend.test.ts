import fc from 'fast-check';
import { median as libraryMedian, probit } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { kendallS, type TimedValue } from '#lib/stats/kendall-s.ts';
import { mannKendall } from '#lib/stats/mann-kendall.ts';
import { normalQuantile } from '#lib/stats/normal-quantile.ts';
import { isSlopeUnder, theilSen } from '#lib/stats/theil-sen.ts';

/** The same answers every time, and the same ones that failed. */
const RUNS = { numRuns: 500, seed: 20_261_125 };
/** Few different values: most series have ties. */
const value = fc.integer({ min: 0, max: 4 });
const untiedTimes = fc.array(value, { minLength: 2, maxLength: 6 });
const tiedTimes = fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), value), { minLength: 2, maxLength: 6 });

function orders(values: readonly number[]): number[][] {
  if (values.length <= 1) return [[...values]];
  return values.flatMap((first, at) =>
    orders(values.filter((_, other) => other !== at)).map((rest) => [first, ...rest]),
  );
}
const series = (times: readonly number[], values: readonly number[]): TimedValue[] =>
  times.map((at, index) => ({ at, value: values[index] ?? Number.NaN }));
/** S by its definition. */
const sOf = (times: readonly number[], values: readonly number[]) =>
  times.reduce(
    (total, time, i) =>
      total +
      times.slice(i + 1).reduce((part, other, j) => {
        const change = (values[i + 1 + j] ?? 0) - (values[i] ?? 0);
        return part + Math.sign(other - time) * Math.sign(change);
      }, 0),
    0,
  );

describe('Mann-Kendall against every order of the values', () => {
  it('exact p: share of orders at least as far from 0', () => {
    fc.assert(
      fc.property(untiedTimes, (values) => {
        const times = values.map((_, index) => index);
        const s = sOf(times, values);
        const all = orders(values).map((order) => sOf(times, order));
        const asFar = all.filter((other) => Math.abs(other) >= Math.abs(s)).length / all.length;
        const found = mannKendall(series(times, values));
        expect(found?.s).toBe(s);
        expect(found?.exact).toBe(true);
        expect(found?.p).toBeCloseTo(asFar, 10);
      }),
      RUNS,
    );
  });
  it('variance of S with ties in times and values: that of all orders', () => {
    fc.assert(
      fc.property(tiedTimes, (points) => {
        const [times, values] = [points.map(([at]) => at), points.map(([, each]) => each)];
        const all = orders(values).map((order) => sOf(times, order));
        const spread = all.reduce((total, s) => total + s * s, 0) / all.length;
        const found = kendallS(series(times, values));
        expect(found.s).toBe(sOf(times, values));
        expect(found.variance).toBeCloseTo(spread, 8);
      }),
      RUNS,
    );
  });
});

describe('Theil-Sen against all slopes sorted', () => {
  const points = fc.array(fc.tuple(fc.nat(60), fc.integer({ min: -20, max: 20 })), {
    minLength: 2,
    maxLength: 25,
  });
  const level = fc.constantFrom(0.8, 0.9, 0.95);

  /** SciPy's rule: of N sorted slopes the round((N - C) / 2)-th and the one after the round((N + C) / 2)-th. */
  function sorted(list: readonly (readonly [number, number])[], confidence: number) {
    const slopes = list
      .flatMap(([t, y], i) => list.slice(i + 1).map(([u, z]) => [u - t, z - y] as const))
      .filter(([apart]) => apart !== 0)
      .map(([apart, change]) => change / apart)
      .sort((a, b) => a - b);
    const variance = kendallS(list.map(([at, each]) => ({ at, value: each }))).variance;
    const reach = (normalQuantile((1 + confidence) / 2) ?? Number.NaN) * Math.sqrt(variance);
    const lower = slopes[Math.max(0, Math.round((slopes.length - reach) / 2) - 1)];
    const upper = slopes[Math.min(slopes.length - 1, Math.round((slopes.length + reach) / 2))];
    return { slopes, lower: lower ?? Number.NaN, upper: upper ?? Number.NaN };
  }

  it('slope, ends and intercept', () => {
    fc.assert(
      fc.property(points, level, (list, confidence) => {
        const found = theilSen(
          list.map(([at, each]) => ({ at, value: each })),
          confidence,
        );
        const { slopes, lower, upper } = sorted(list, confidence);
        expect(found === undefined).toBe(slopes.length === 0);
        if (slopes.length === 0) return;
        const slope = libraryMedian(slopes);
        expect(found?.pairs).toBe(slopes.length);
        expect(found?.slope).toBeCloseTo(slope, 10);
        expect(found?.lower).toBeCloseTo(lower, 10);
        expect(found?.upper).toBeCloseTo(upper, 10);
        const [times, values] = [list.map(([at]) => at), list.map(([, each]) => each)];
        expect(found?.intercept).toBeCloseTo(libraryMedian(values) - slope * libraryMedian(times), 8);
      }),
      RUNS,
    );
  });
  it('whether the upper end is under a limit', () => {
    fc.assert(
      fc.property(points, level, fc.double({ min: -2, max: 2, noNaN: true }), (list, confidence, limit) => {
        const { slopes, upper } = sorted(list, confidence);
        const found = isSlopeUnder(
          list.map(([at, each]) => ({ at, value: each })),
          confidence,
          limit,
        );
        expect(found).toBe(slopes.length > 0 && upper < limit);
      }),
      RUNS,
    );
  });
});

describe('quantile of a normal against simple-statistics', () => {
  it('to the three places that library keeps', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 0.98, noNaN: true }), (p) => {
        expect(Math.abs((normalQuantile(p) ?? Number.NaN) - probit(p))).toBeLessThan(0.005);
      }),
      RUNS,
    );
  });
});
