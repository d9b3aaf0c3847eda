import { describe, expect, it } from 'vitest';
import { chiSquareDraw } from '#lib/stats/chi-square-draw.ts';
import { normalAboveDraw } from '#lib/stats/normal-above-draw.ts';
import { normalCdf, normalDensity } from '#lib/stats/normal-cdf.ts';
import { seededDraws } from '#lib/stats/seeded-draws.ts';
import { weightedQuantiles } from '#lib/stats/weighted-quantiles.ts';

const MANY = 40_000;
const from = (seed: string, draw: (draws: ReturnType<typeof seededDraws>) => number) => {
  const draws = seededDraws(seed);
  return Array.from({ length: MANY }, () => draw(draws));
};
const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const variance = (values: number[]) => {
  const middle = mean(values);
  return mean(values.map((value) => (value - middle) ** 2));
};

describe('seeded draws', () => {
  it('are the same for the same text and others for a text one letter away', () => {
    const first = (seed: string) => Array.from({ length: 5 }, seededDraws(seed).uniform);
    expect(first('client 1')).toEqual(first('client 1'));
    expect(first('client 1').some((value) => first('client 2').includes(value))).toBe(false);
  });
  it('are spread over 0 to 1, also the first of many neighbouring seeds', () => {
    const firsts = Array.from({ length: MANY }, (_, n) => seededDraws(`${n}`).uniform());
    // 40,000 uniforms: standard errors 0.0014, 0.0004 and 0.005; four of each.
    expect(Math.abs(mean(firsts) - 0.5)).toBeLessThan(0.006);
    expect(Math.abs(variance(firsts) - 1 / 12)).toBeLessThan(0.0016);
    const pairs = firsts.slice(1).map((value, n) => (value - 0.5) * ((firsts[n] ?? 0) - 0.5) * 12);
    expect(Math.abs(mean(pairs))).toBeLessThan(0.02);
  });
  it('are normal by moments and tails', () => {
    const normals = from('normal', (draws) => draws.normal());
    expect(mean(normals)).toBeCloseTo(0, 1);
    expect(variance(normals)).toBeCloseTo(1, 1);
    expect(normals.filter((z) => z > 1.2816).length / MANY).toBeCloseTo(0.1, 2);
  });
});

describe('draws of chi-square', () => {
  it.each([1, 2, 6, 40])('%d degrees: mean and twice the variance', (degrees) => {
    const values = from(`chi ${degrees}`, (draws) => chiSquareDraw(degrees, draws));
    // Four standard errors of each.
    expect(Math.abs(mean(values) / degrees - 1)).toBeLessThan(4 * Math.sqrt(2 / degrees / MANY));
    const spread = Math.sqrt((2 + 12 / degrees) / MANY);
    expect(Math.abs(variance(values) / (2 * degrees) - 1)).toBeLessThan(4 * spread);
    expect(Math.min(...values)).toBeGreaterThan(0);
  });
});

describe('draws of a normal above a bound', () => {
  it.each([-2, 0, 0.7, 3])('above %d: none under it, the mean by closed form', (bound) => {
    const values = from(`above ${bound}`, (draws) => normalAboveDraw(bound, draws));
    expect(Math.min(...values)).toBeGreaterThan(bound);
    expect(mean(values)).toBeCloseTo(normalDensity(bound) / normalCdf(-bound), 1);
  });
});

describe('weighted quantiles', () => {
  const values = Float64Array.from([30, 10, 20, 40]);
  it('go by weight, in order of value', () => {
    expect(weightedQuantiles(values, Float64Array.from([1, 1, 1, 1]), [0.25, 0.5, 0.51, 1])).toEqual([
      10, 20, 30, 40,
    ]);
    expect(weightedQuantiles(values, Float64Array.from([0, 1, 0, 9]), [0.1, 0.11])).toEqual([10, 40]);
  });
  it('take all alike without any weight, and say nothing of nothing', () => {
    expect(weightedQuantiles(values, new Float64Array(4), [0.5])).toEqual([20]);
    expect(weightedQuantiles(new Float64Array(0), new Float64Array(0), [0.5])).toEqual([]);
  });
});
