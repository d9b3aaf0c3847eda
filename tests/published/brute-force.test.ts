import fc from 'fast-check';
import {
  mean as libraryMean,
  median as libraryMedian,
  sampleStandardDeviation,
  standardDeviation,
} from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { binomialTail } from '#lib/stats/binomial-tail.ts';
import { coefficientOfVariation } from '#lib/stats/coefficient-of-variation.ts';
import { coupledRatio } from '#lib/stats/coupled-ratio.ts';
import { cusum } from '#lib/stats/cusum.ts';
import { ewma } from '#lib/stats/ewma.ts';
import { fisherExact } from '#lib/stats/fisher-exact.ts';
import { kaplanMeier } from '#lib/stats/kaplan-meier.ts';
import { median } from '#lib/stats/median.ts';
import { medianAbsoluteDeviation } from '#lib/stats/median-absolute-deviation.ts';
import { monotony } from '#lib/stats/monotony.ts';
import { normalCdf, normalDensity } from '#lib/stats/normal-cdf.ts';
import { signTest } from '#lib/stats/sign-test.ts';
import { uncoupledRatio } from '#lib/stats/uncoupled-ratio.ts';

/** The same answers every time, and the same ones that failed. */
const RUNS = { numRuns: 500, seed: 20_261_125 };
const loads = fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 2, maxLength: 28 });
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const close = (found: number | undefined, expected: number, part = 1e-10) =>
  expect(Math.abs((found ?? Number.NaN) - expected)).toBeLessThanOrEqual(
    part * Math.max(1, Math.abs(expected)),
  );

/** Number of ones in the binary form. */
const ones = (bits: number): number => (bits === 0 ? 0 : (bits & 1) + ones(bits >>> 1));
/** All ways to mark some of n things, as bits. */
const markings = (n: number) => Array.from({ length: 2 ** n }, (_, bits) => bits);

describe('counts against every case gone through', () => {
  it('binomial tails: every run of hits and misses with its chance', () => {
    const cases = fc.record({
      trials: fc.integer({ min: 1, max: 10 }),
      at: fc.nat(10),
      chance: fc.double({ min: 0.01, max: 0.99, noNaN: true }),
    });
    fc.assert(
      fc.property(cases, ({ trials, at, chance }) => {
        const successes = Math.min(at, trials);
        const chanceOf = (keep: (hits: number) => boolean) =>
          sum(
            markings(trials)
              .map(ones)
              .filter(keep)
              .map((hits) => chance ** hits * (1 - chance) ** (trials - hits)),
          );
        close(
          binomialTail({ successes, trials, chance, tail: 'lower' }),
          chanceOf((hits) => hits <= successes),
        );
        close(
          binomialTail({ successes, trials, chance, tail: 'upper' }),
          chanceOf((hits) => hits >= successes),
        );
      }),
      RUNS,
    );
  });
  it('sign test: every way the signs can fall', () => {
    fc.assert(
      fc.property(fc.nat(6), fc.nat(6), (more, fewer) => {
        if (more + fewer === 0) return;
        const all = markings(more + fewer);
        close(signTest(more, fewer), all.filter((bits) => ones(bits) >= more).length / all.length);
      }),
      RUNS,
    );
  });
  it('Fisher: every way to deal the hits out to the two groups', () => {
    const group = fc.integer({ min: 0, max: 6 });
    fc.assert(
      fc.property(group, group, group, group, (hits, misses, otherHits, otherMisses) => {
        const [of, otherOf] = [hits + misses, otherHits + otherMisses];
        if (of + otherOf > 14) return;
        const deals = markings(of + otherOf).filter((bits) => ones(bits) === hits + otherHits);
        const asFar = deals.filter((bits) => ones(bits & (2 ** of - 1)) >= hits);
        close(fisherExact({ hits, of, otherHits, otherOf }), asFar.length / deals.length);
      }),
      RUNS,
    );
  });
});

/** Efron 1967: who is no longer seen hands his weight on, in equal parts, to all seen for longer. */
function redistributed(durations: readonly { time: number; ended: boolean }[]): Map<number, number> {
  const sorted = [...durations].sort((a, b) => a.time - b.time || Number(b.ended) - Number(a.ended));
  const weights = sorted.map(() => 1 / sorted.length);
  sorted.forEach(({ ended }, index) => {
    const later = sorted.length - index - 1;
    if (ended || later === 0) return;
    for (let at = index + 1; at < sorted.length; at += 1) {
      weights[at] = (weights[at] ?? 0) + (weights[index] ?? 0) / later;
    }
    weights[index] = 0;
  });
  const running = new Map<number, number>();
  for (const { time } of sorted.filter(({ ended }) => ended)) {
    running.set(
      time,
      1 - sum(weights.filter((_, at) => sorted[at]?.ended && (sorted[at]?.time ?? 0) <= time)),
    );
  }
  return running;
}

describe('series against another way to the same', () => {
  it('Kaplan-Meier: weight handed on to the right', () => {
    const durations = fc.array(fc.record({ time: fc.integer({ min: 1, max: 15 }), ended: fc.boolean() }), {
      maxLength: 25,
    });
    fc.assert(
      fc.property(durations, (list) => {
        const expected = redistributed(list);
        const steps = kaplanMeier(list);
        expect(steps.map((step) => step.time)).toEqual([...expected.keys()]);
        for (const { time, share } of steps) close(share, expected.get(time) ?? Number.NaN);
      }),
      RUNS,
    );
  });
  it('CUSUM: the largest of all partial sums that end here, or 0', () => {
    fc.assert(
      fc.property(loads, fc.nat(500), fc.nat(100), (values, target, slack) => {
        cusum(values, target, slack).forEach((found, end) => {
          const over = values.slice(0, end + 1).map((value) => value - target - slack);
          close(found, Math.max(0, ...over.map((_, start) => sum(over.slice(start)))));
        });
      }),
      RUNS,
    );
  });
  it('weighted means: every weight written out', () => {
    fc.assert(
      fc.property(loads, fc.integer({ min: 1, max: 40 }), (values, days) => {
        const weight = 2 / (days + 1);
        const aged = values.map(
          (value, at) => value * (at === 0 ? 1 : weight) * (1 - weight) ** (values.length - 1 - at),
        );
        close(ewma(values, days), sum(aged));
      }),
      RUNS,
    );
  });
  it('coupled and uncoupled ratio: u = 3c / (4 - c)', () => {
    const week = fc.integer({ min: 1, max: 4000 });
    fc.assert(
      fc.property(fc.nat(9000), week, week, week, (latest, one, two, three) => {
        const c = coupledRatio(latest, [one, two, three]) ?? Number.NaN;
        close(uncoupledRatio(latest, [one, two, three]), (3 * c) / (4 - c));
      }),
      RUNS,
    );
  });
});

describe('spread against simple-statistics', () => {
  it('monotony and strain: mean over population SD', () => {
    fc.assert(
      fc.property(loads, (values) => {
        const found = monotony(values);
        expect('reason' in found).toBe(new Set(values).size === 1);
        if ('reason' in found) return;
        const expected = libraryMean(values) / standardDeviation(values);
        close(found.monotony, expected);
        close(found.strain, sum(values) * expected);
      }),
      RUNS,
    );
  });
  it('variation: sample SD over mean; middle; median distance from the middle', () => {
    fc.assert(
      fc.property(loads, (values) => {
        if (sum(values) > 0) {
          close(
            coefficientOfVariation(values),
            (sampleStandardDeviation(values) / libraryMean(values)) * 100,
          );
        }
        const middle = libraryMedian(values);
        close(median(values), middle);
        close(
          medianAbsoluteDeviation(values),
          1.4826 * libraryMedian(values.map((value) => Math.abs(value - middle))),
        );
      }),
      RUNS,
    );
  });
  // The library's own normal shares and quantiles keep four places only: Simpson's rule instead.
  it('share of a normal: the density added up', () => {
    fc.assert(
      fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (z) => {
        const steps = 400;
        const width = z / steps;
        const weights = Array.from({ length: steps + 1 }, (_, at) =>
          at === 0 || at === steps ? 1 : at % 2 === 1 ? 4 : 2,
        );
        const area = sum(weights.map((weight, at) => weight * normalDensity(at * width))) * (width / 3);
        close(normalCdf(z), 0.5 + area, 1e-9);
      }),
      RUNS,
    );
  });
});
