import { describe, expect, it } from 'vitest';
import { binomialTail } from '#lib/stats/binomial-tail.ts';
import { coefficientOfVariation } from '#lib/stats/coefficient-of-variation.ts';
import { cusum } from '#lib/stats/cusum.ts';
import { fisherExact } from '#lib/stats/fisher-exact.ts';
import { kaplanMeier, kaplanMeierMedian } from '#lib/stats/kaplan-meier.ts';
import { median } from '#lib/stats/median.ts';
import { medianAbsoluteDeviation } from '#lib/stats/median-absolute-deviation.ts';
import { normalCdf } from '#lib/stats/normal-cdf.ts';
import { normalQuantile } from '#lib/stats/normal-quantile.ts';
import { signTest } from '#lib/stats/sign-test.ts';

describe('sign test and binomial tails', () => {
  // R 4.6.0 and SciPy: two-sided p of the exact test, halved.
  it.each([
    [13, 2, 0.00738525390625 / 2],
    [9, 0, 0.00390625 / 2],
    [6, 0, 0.03125 / 2],
    [8, 1, 0.0390625 / 2],
    [10, 2, 0.0385742 / 2],
    [7, 1, 0.0703125 / 2],
  ])('%i of one side, %i of the other: one-sided p %f', (more, fewer, p) => {
    expect(signTest(more, fewer)).toBeCloseTo(p, 7);
  });
  it('eight of eight is 1 in 256', () => expect(signTest(8, 0)).toBeCloseTo(1 / 256, 14));
  it('binomial tails, by hand: 4 or fewer of 9 at 0.8', () => {
    // Sum of 9Ck 0.8^k 0.2^(9-k), k = 0..4, by hand: 0.019582…
    expect(binomialTail({ successes: 4, trials: 9, chance: 0.8, tail: 'lower' })).toBeCloseTo(0.01958144, 8);
  });
  it('70 of 100 at 0.8: lower tail of the published two-sided 0.01695', () => {
    const lower = binomialTail({ successes: 70, trials: 100, chance: 0.8, tail: 'lower' }) ?? 0;
    expect(lower).toBeGreaterThan(0.008);
    expect(lower).toBeLessThan(0.01695);
  });
});

describe("Fisher's exact test", () => {
  it('tea tasting (Fisher 1935): 3 of 4 right, one-sided p 0.2429 (from memory: R help of fisher.test)', () => {
    expect(fisherExact({ hits: 3, of: 4, otherHits: 1, otherOf: 4 })).toBeCloseTo(17 / 70, 10);
  });
  it('convictions of twins (Fisher 1936; R help of fisher.test, from memory): p 0.0005367', () => {
    expect(fisherExact({ hits: 10, of: 12, otherHits: 3, otherOf: 18 })).toBeCloseTo(0.0004652, 6);
    // the published two-sided p of 0.0005367 holds this tail and one rarer table on the other side
  });
  it('9 of 16 against 2 of 16: 0.0113 one-sided, twice that two-sided (0.023)', () => {
    const p = fisherExact({ hits: 9, of: 16, otherHits: 2, otherOf: 16 }) ?? 0;
    expect(2 * p).toBeCloseTo(0.023, 3);
  });
});

describe('Kaplan-Meier: Freireich 1963 (CRAN MASS gehan)', () => {
  const treated = [6, 6, 6, 7, 10, 13, 16, 22, 23].map((time) => ({ time, ended: true }));
  const running = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35].map((time) => ({ time, ended: false }));
  const placebo = [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23];
  it.each([
    [6, 21, 0.857, 0.0764],
    [7, 17, 0.807, 0.0869],
    [10, 15, 0.753, 0.0963],
    [13, 12, 0.69, 0.1068],
    [16, 11, 0.627, 0.1141],
    [22, 7, 0.538, 0.1282],
    [23, 6, 0.448, 0.1346],
  ])('week %i: %i at risk, share %f, error %f', (time, atRisk, share, error) => {
    const step = kaplanMeier([...running, ...treated]).find((each) => each.time === time);
    expect(step?.atRisk).toBe(atRisk);
    expect(step?.share).toBeCloseTo(share, 3);
    expect(step?.standardError).toBeCloseTo(error, 4);
  });
  it('medians 23 and 8 weeks', () => {
    expect(kaplanMeierMedian([...treated, ...running])).toBe(23);
    expect(kaplanMeierMedian(placebo.map((time) => ({ time, ended: true })))).toBe(8);
  });
});

describe('CUSUM', () => {
  it('NIST/SEMATECH e-Handbook 6.3.2.3: upper sums', () => {
    const x = [
      324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15,
      328.325, 327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
    ];
    const printed = [
      0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.0, 19.04,
    ];
    cusum(x, 325, 0.3175).forEach((value, index) => {
      expect(Math.abs(value - (printed[index] ?? Number.NaN))).toBeLessThanOrEqual(0.005 + 1e-9);
    });
  });
  it('Montgomery & Runger, example 16-6: sums above', () => {
    const x = [
      102.0, 94.8, 98.3, 98.4, 102.0, 98.5, 99.0, 97.7, 100.0, 98.1, 101.3, 98.7, 101.1, 98.4, 97.0, 96.7,
      100.3, 101.4, 97.2, 101.0,
    ];
    const sums = [2.0, 0, 0, 0, 2.0, 0.5, 0, 0, 0, 0, 1.3, 0, 1.1, 0, 0, 0, 0.3, 1.7, 0, 1.0];
    expect(cusum(x, 99, 1).map((value) => Math.round(value * 10) / 10)).toEqual(sums);
  });
});

describe('middle and spread', () => {
  it('Leys et al. 2013: median 7, scaled MAD 5.1891 (paper from memory; R mad)', () => {
    const values = [1, 3, 3, 6, 8, 10, 10, 1000];
    expect(median(values)).toBe(7);
    expect(medianAbsoluteDeviation(values)).toBeCloseTo(5.1891, 4);
  });
  it('copper in flour (AMC 1989; CRAN MASS): median 3.385, scaled MAD 0.526323', () => {
    const chem = [
      2.9, 3.1, 3.4, 3.4, 3.7, 3.7, 2.8, 2.5, 2.4, 2.4, 2.7, 2.2, 5.28, 3.37, 3.03, 3.03, 28.95, 3.77, 3.4,
      2.2, 3.5, 3.6, 3.7, 3.7,
    ];
    expect(median(chem)).toBeCloseTo(3.385, 10);
    expect(medianAbsoluteDeviation(chem)).toBeCloseTo(0.526323, 6);
    expect(coefficientOfVariation(chem)).toBeCloseTo((5.297396 / 4.280417) * 100, 3);
  });
  it('R mad(1:9) = 2.9652 (computed)', () => {
    expect(medianAbsoluteDeviation([1, 2, 3, 4, 5, 6, 7, 8, 9])).toBeCloseTo(2.9652, 6);
  });
  it('normal: 1.959964 and 1.281552 (tables), far tail of EPA 17-6', () => {
    expect(normalQuantile(0.975)).toBeCloseTo(1.959964, 6);
    expect(normalQuantile(0.9)).toBeCloseTo(1.281552, 6);
    expect(normalCdf(0)).toBe(0.5);
    expect((2 * normalCdf(-5.107322)) / 3.267574e-7).toBeCloseTo(1, 5);
  });
});
