import { describe, expect, it } from 'vitest';
import type { TimedValue } from '#lib/stats/kendall-s.ts';
import { exactTail, mannKendall } from '#lib/stats/mann-kendall.ts';
import { theilSen } from '#lib/stats/theil-sen.ts';

const series = (times: number[], values: number[]): TimedValue[] =>
  times.map((at, index) => ({ at, value: values[index] ?? Number.NaN }));
const inOrder = (values: number[]) =>
  series(
    values.map((_, index) => index),
    values,
  );

// EPA 2009 Unified Guidance, example 17-6, as printed by CRAN EnvStats kendallTrendTest.
const SULFATE = series(
  [
    89.6, 89.8, 90.1, 90.3, 90.6, 90.8, 91.1, 91.3, 91.6, 91.8, 92.1, 92.6, 93.1, 93.6, 94.1, 94.6, 95.1,
    95.6, 95.8, 96.1, 96.3, 96.6, 96.8,
  ],
  [
    480, 450, 490, 520, 485, 510, 510, 530, 510, 560, 560, 540, 590, 550, 600, 700, 570, 610, 650, 620, 830,
    720, 590,
  ],
);
// EPA 2009, example 17-7 (CRAN EnvStats).
const SODIUM = series(
  [89.6, 90.1, 90.8, 91.1, 92.1, 93.1, 94.1, 95.6, 96.1, 96.3],
  [56, 53, 51, 55, 52, 60, 62, 59, 61, 63],
);

describe('Mann-Kendall against published values', () => {
  it('EPA 17-6: tau-a, z and p of EnvStats', () => {
    const result = mannKendall(SULFATE);
    expect(result?.s).toBe(194);
    expect(result?.variance).toBeCloseTo(1428, 9);
    expect(result?.tauA).toBeCloseTo(0.7667984, 7);
    expect(result?.z).toBeCloseTo(5.107322, 6);
    expect((result?.pNormal ?? 0) / 3.267574e-7).toBeCloseTo(1, 5);
  });
  it('EPA 17-7: normal and exact p (R cor.test, SciPy)', () => {
    const result = mannKendall(SODIUM);
    expect([result?.s, result?.variance]).toEqual([25, 125]);
    expect(result?.z).toBeCloseTo(2.146625258, 8);
    expect(result?.pNormal).toBeCloseTo(0.0318231274, 9);
    expect(result?.p).toBeCloseTo(0.0286094577, 9);
  });
  it('EPA QA/G-9S page 109: ties (EarthSoft help page)', () => {
    const result = mannKendall(inOrder([10, 10, 10, 5, 10, 20, 18, 17, 15, 24, 15]));
    expect(result?.s).toBe(22);
    expect(result?.variance).toBeCloseTo(155.33, 2);
    expect(result?.z).toBeCloseTo(1.685, 3);
    expect(result?.pNormal).toBeCloseTo(0.0919982592, 9); // computed with R and SciPy
    expect(result?.p).toBeCloseTo(0.0921356421, 9); // computed with R and SciPy
  });
  it('Hollander & Wolfe example 9.1 (CRAN NSM3): exact p', () => {
    const result = mannKendall(series([1, 2, 3, 4, 5], [1.26, 1.27, 1.12, 1.16, 1.03]));
    expect(result?.s).toBe(-6);
    expect(result?.p).toBeCloseTo(0.2333333, 7);
  });
  it('tied times and values (computed with R cor.test)', () => {
    const result = mannKendall(series([0, 0, 7, 14, 14, 21, 30], [10, 12, 12, 13, 15, 15, 18]));
    expect(result?.s).toBe(17);
    expect(result?.variance).toBeCloseTo(40.52380952, 8);
    expect(result?.p).toBeCloseTo(0.0119567318, 9);
    expect(result?.exact).toBe(false);
  });
  it('Sen 1968: exact two-sided p is 2 of 7! (from memory, recomputed with SciPy)', () => {
    const result = mannKendall(series([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78]));
    expect(result?.p).toBeCloseTo(0.0003968254, 10);
  });
  it('a falling invented series of twelve', () => {
    const result = mannKendall(inOrder([24, 25, 24, 25, 23, 24, 22, 21, 20, 19, 18, 17]));
    expect(result?.s).toBe(-54); // counted by hand
    expect(result?.p).toBeLessThan(0.0002);
  });
  // Gilbert 1987, table A18 (from memory, recomputed).
  it.each([
    [4, 6, 0.042],
    [5, 8, 0.042],
    [6, 9, 0.068],
    [6, 15, 0.0014],
    [7, 13, 0.035],
    [8, 16, 0.031],
    [9, 18, 0.038],
    [10, 21, 0.036],
    [10, 1, 0.5],
  ])('table of exact tails: n = %i, S >= %i: %f', (n, s, expected) => {
    expect(Math.abs(exactTail(s, new Array<number>(n).fill(1)) - expected)).toBeLessThan(0.00051);
  });
});

describe('Theil-Sen against published values', () => {
  it('EPA 17-6: slope, interval, intercept', () => {
    const result = theilSen(SULFATE, 0.95);
    expect(result?.slope).toBeCloseTo(26.6666667, 6);
    expect(result?.intercept).toBeCloseTo(-1909.3333333, 4);
    expect(result?.lower).toBeCloseTo(20, 6);
    expect(result?.upper).toBeCloseTo(35.8490566, 6); // SciPy's rank rule
    expect(result?.pairs).toBe(253);
  });
  it('EPA 17-7: slope 1.33 and SciPy limits', () => {
    const result = theilSen(SODIUM, 0.95);
    expect(result?.slope).toBeCloseTo(1.3333333, 6);
    expect(result?.intercept).toBeCloseTo(-65.9666667, 5);
    expect(result?.lower).toBeCloseTo(0.4545455, 6);
    expect(result?.upper).toBeCloseTo(2.3333333, 6);
  });
  it('Sen 1968: slope 4, 93 % limits 3.71 and 4.38 (from memory)', () => {
    const result = theilSen(series([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78]), 0.93);
    expect(result?.slope).toBe(4);
    expect(result?.lower).toBeCloseTo(3.7142857, 6);
    expect(result?.upper).toBeCloseTo(4.375, 6);
    expect(result?.intercept).toBe(4);
  });
  it('Hollander & Wolfe example 9.1: limits are the extremes', () => {
    const result = theilSen(series([1, 2, 3, 4, 5], [1.26, 1.27, 1.12, 1.16, 1.03]), 0.95);
    expect(result?.slope).toBeCloseTo(-0.05625, 9);
    expect([result?.lower, result?.upper].map((each) => each?.toFixed(4))).toEqual(['-0.1500', '0.0400']);
  });
  it('tied times: 19 usable pairs (computed with SciPy)', () => {
    const result = theilSen(series([0, 0, 7, 14, 14, 21, 30], [10, 12, 12, 13, 15, 15, 18]), 0.95);
    expect(result?.pairs).toBe(19);
    expect(result?.slope).toBeCloseTo(0.2142857, 6);
    expect(result?.lower).toBeCloseTo(0.0714286, 6);
    expect(result?.upper).toBeCloseTo(0.3333333, 6);
  });
});
