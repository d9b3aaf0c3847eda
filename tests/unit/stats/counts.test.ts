import fc from 'fast-check';
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
import { orderStatistic } from '#lib/stats/order-statistic.ts';
import { signTest } from '#lib/stats/sign-test.ts';

const count = fc.integer({ min: 0, max: 30 });
const numbers = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 20 });

describe('questions without an answer', () => {
  it('are undefined, never NaN', () => {
    expect(median([])).toBeUndefined();
    expect(medianAbsoluteDeviation([])).toBeUndefined();
    expect(coefficientOfVariation([4])).toBeUndefined();
    expect(coefficientOfVariation([-1, 1])).toBeUndefined();
    expect(signTest(0, 0)).toBeUndefined();
    expect(binomialTail({ successes: 4, trials: 3, chance: 0.5, tail: 'lower' })).toBeUndefined();
    expect(binomialTail({ successes: 1, trials: 3, chance: 1.5, tail: 'lower' })).toBeUndefined();
    expect(binomialTail({ successes: 0.5, trials: 3, chance: 0.5, tail: 'lower' })).toBeUndefined();
    expect(fisherExact({ hits: 3, of: 2, otherHits: 0, otherOf: 4 })).toBeUndefined();
    expect(fisherExact({ hits: -1, of: 2, otherHits: 0, otherOf: 4 })).toBeUndefined();
    expect(normalQuantile(0)).toBeUndefined();
    expect(kaplanMeierMedian([{ time: 3, ended: false }])).toBeUndefined();
    expect(kaplanMeier([])).toEqual([]);
    expect(cusum([], 0, 1)).toEqual([]);
  });
});

describe('binomialTail', () => {
  it('adds up: this many or fewer, and one more or more', () => {
    fc.assert(
      fc.property(count, count, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, chance) => {
        const [successes, trials] = a < b ? [a, b] : [b, a];
        if (successes === trials) return;
        const lower = binomialTail({ successes, trials, chance, tail: 'lower' }) ?? Number.NaN;
        const upper = binomialTail({ successes: successes + 1, trials, chance, tail: 'upper' }) ?? Number.NaN;
        expect(lower + upper).toBeCloseTo(1, 9);
      }),
      { numRuns: 1000 },
    );
  });
  it('is certain at the ends', () => {
    expect(binomialTail({ successes: 5, trials: 5, chance: 0.3, tail: 'lower' })).toBe(1);
    expect(binomialTail({ successes: 2, trials: 5, chance: 1, tail: 'lower' })).toBe(0);
    expect(binomialTail({ successes: 2, trials: 5, chance: 0, tail: 'lower' })).toBe(1);
  });
});

describe('fisherExact', () => {
  it('is a probability, falls with more hits, and is 1 for none', () => {
    fc.assert(
      fc.property(count, count, count, count, (a, b, c, d) => {
        const of = a + b;
        const table = { hits: a, of, otherHits: c, otherOf: c + d };
        const p = fisherExact(table) ?? Number.NaN;
        expect(p).toBeGreaterThan(0);
        expect(p).toBeLessThanOrEqual(1);
        if (a < of) expect(fisherExact({ ...table, hits: a + 1 })).toBeLessThanOrEqual(p + 1e-12);
        expect(fisherExact({ ...table, hits: 0 })).toBeCloseTo(1, 9);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('cusum', () => {
  it('never goes under 0, starts over after a low value, and rises with a worse value', () => {
    expect(cusum([3, 3, 0, 3], 1, 1)).toEqual([1, 2, 0, 1]);
    fc.assert(
      fc.property(numbers, fc.nat(19), (values, index) => {
        const sums = cusum(values, 2, 1);
        const worse = cusum(
          values.map((value, at) => (at === index ? value + 2 : value)),
          2,
          1,
        );
        expect(Math.min(...sums)).toBeGreaterThanOrEqual(0);
        expect(worse.every((sum, at) => sum >= (sums[at] ?? 0))).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('median and spread', () => {
  it('shift and scale with the values; order does not matter', () => {
    fc.assert(
      fc.property(numbers, fc.integer({ min: -9, max: 9 }), (values, shift) => {
        const moved = values.map((value) => 2 * value + shift).reverse();
        expect(median(moved)).toBeCloseTo(2 * (median(values) ?? 0) + shift, 9);
        expect(medianAbsoluteDeviation(moved)).toBeCloseTo(2 * (medianAbsoluteDeviation(values) ?? 0), 9);
      }),
      { numRuns: 1000 },
    );
  });
  it('19, 20, 21 varies by 5 %', () => expect(coefficientOfVariation([19, 20, 21])).toBeCloseTo(5, 10));
});

describe('orderStatistic', () => {
  it('is what a sort would put there', () => {
    fc.assert(
      fc.property(numbers, fc.nat(19), (values, rank) => {
        const sorted = [...values].sort((a, b) => a - b);
        expect(orderStatistic(Float64Array.from(values), rank)).toBe(sorted[rank]);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('kaplanMeier', () => {
  const durations = fc.array(fc.record({ time: fc.integer({ min: 1, max: 30 }), ended: fc.boolean() }), {
    maxLength: 20,
  });
  it('falls, from 1 to 0 at the lowest; order does not matter', () => {
    fc.assert(
      fc.property(durations, (list) => {
        const shares = kaplanMeier(list).map((step) => step.share);
        expect(shares.every((share, at) => share >= -1e-12 && share < (shares[at - 1] ?? 1))).toBe(true);
        expect(kaplanMeier([...list].reverse())).toEqual(kaplanMeier(list));
      }),
      { numRuns: 1000 },
    );
  });
  it('without censoring is the share still running', () => {
    const steps = kaplanMeier([2, 4, 4, 9].map((time) => ({ time, ended: true })));
    expect(steps.map((step) => step.share.toFixed(2))).toEqual(['0.75', '0.25', '0.00']);
  });
});

describe('normal', () => {
  it('quantile and share undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.0001, max: 0.9999, noNaN: true }), (p) => {
        expect(normalCdf(normalQuantile(p) ?? Number.NaN)).toBeCloseTo(p, 10);
      }),
      { numRuns: 300 },
    );
  });
  it('both tails mirror each other on either side of 3', () => {
    for (const z of [0.5, 2.999, 3.001, 6]) expect(normalCdf(z) + normalCdf(-z)).toBeCloseTo(1, 12);
    expect(normalCdf(2.9999999)).toBeCloseTo(normalCdf(3.0000001), 8);
  });
});
