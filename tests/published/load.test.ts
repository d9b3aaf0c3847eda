import { describe, expect, it } from 'vitest';
import { dayFacts } from '#lib/checks/day-facts.ts';
import { coupledRatio } from '#lib/stats/coupled-ratio.ts';
import { ewma } from '#lib/stats/ewma.ts';
import { monotony } from '#lib/stats/monotony.ts';
import { uncoupledRatio } from '#lib/stats/uncoupled-ratio.ts';
import { aCheckIn } from '#tests/fixtures/history-builders.ts';

/** Monotony where there is one; a test that got a reason instead fails with it. */
function numbersOf(loads: readonly number[]): { monotony: number; strain: number } {
  const found = monotony(loads);
  if ('reason' in found) throw new Error(found.reason);
  return found;
}

// Foster C et al., J Strength Cond Res 2001;15(1):109-115, table 5: the loads as printed, nine sessions in a week.
// Three of them are not rating x minutes; the printed total, monotony and strain agree with the printed loads.
const PRINTED = [940, 50, 840, 280, 180, 390, 50, 390, 280];

describe('session load, monotony and strain (Foster)', () => {
  it.each([
    [2, 25, 50],
    [7, 120, 840],
    [7, 40, 280],
    [3, 60, 180],
    [5, 180, 900], // printed as 940
    [8, 75, 600], // printed as 390
  ])('rating %i for %i minutes is %i AU', (effort, minutes, load) => {
    expect(dayFacts([aCheckIn(0, { effort, minutes })], new Map()).sessionLoad).toBe(load);
  });
  it('gives the printed total 3,400, monotony 1.26 and strain 4,284 of the nine printed sessions', () => {
    const { monotony: found, strain } = numbersOf(PRINTED);
    expect(PRINTED.reduce((sum, load) => sum + load, 0)).toBe(3_400);
    expect(Number(found.toFixed(2))).toBe(1.26);
    expect(3_400 * Number(found.toFixed(2))).toBe(4_284);
    expect(strain).toBeCloseTo(3_400 * found, 6);
  });
  // The same week as seven days, and with rating x minutes throughout: own computation from the table, population SD.
  it.each([
    ['seven printed days', [940, 50, 1_120, 180, 390, 50, 670], 1.2116],
    ['nine corrected sessions', [900, 50, 840, 280, 180, 600, 50, 600, 280], 1.373],
    ['seven corrected days', [900, 50, 1_120, 180, 600, 50, 880], 1.3069],
    ['a week with two rest days', [360, 0, 525, 90, 0, 720, 180], 1.0428],
    ['two loads in turn', [400, 200, 400, 200, 400, 200, 400], 3.1754],
    ['nearly no spread', [300, 300, 300, 300, 300, 300, 310], 86.1],
    ['one loaded day in seven: 1 / sqrt(6)', [500, 0, 0, 0, 0, 0, 0], 0.40825],
  ])('%s', (_, loads, expected) => {
    const digits = expected > 10 ? 1 : 4;
    expect(numbersOf(loads).monotony).toBeCloseTo(expected, digits);
  });
  it('has the strain of the week with two rest days: 1,955.2 AU (own computation)', () => {
    expect(numbersOf([360, 0, 525, 90, 0, 720, 180]).strain).toBeCloseTo(1_955.2, 1);
  });
  it('keeps monotony and multiplies strain when every load is three times as large', () => {
    const once = numbersOf([360, 0, 525, 90, 0, 720, 180]);
    const thrice = numbersOf([1_080, 0, 1_575, 270, 0, 2_160, 540]);
    expect(thrice.monotony).toBeCloseTo(once.monotony, 12);
    expect(thrice.strain).toBeCloseTo(3 * once.strain, 8);
  });
  it('gives a reason where there is no spread, never 0 or 1', () => {
    expect(monotony([0, 0, 0, 0, 0, 0, 0])).toEqual({ reason: 'no-training' });
    expect(monotony([200, 200, 200])).toEqual({ reason: 'no-variation' });
    expect(monotony([])).toEqual({ reason: 'no-days' });
  });
});

// Formulas: Gabbett, Br J Sports Med 2016;50(5):273-280 (coupled); Lolli et al., 2019;53(15):921-922 (uncoupled).
// Values: own computation from them.
describe('load of a week against the weeks before', () => {
  it('1,600 after 1,000, 1,200, 1,100: coupled 1.3061, uncoupled 1.4545', () => {
    expect(coupledRatio(1_600, [1_000, 1_200, 1_100])).toBeCloseTo(1.3061, 4);
    expect(uncoupledRatio(1_600, [1_000, 1_200, 1_100])).toBeCloseTo(1.4545, 4);
  });
  // u = 3c / (4 - c): what one ratio says, said by the other.
  it.each([
    [0.75, 0.8],
    [1, 1],
    [1.4444, 1.3],
    [1.8, 1.5],
    [3, 2],
    [1.5, 1.3333],
  ])('uncoupled %f is coupled %f', (uncoupled, coupled) => {
    expect(coupledRatio(uncoupled * 900, [900, 900, 900])).toBeCloseTo(coupled, 4);
    expect(uncoupledRatio(uncoupled * 900, [900, 900, 900])).toBeCloseTo(uncoupled, 10);
  });
  it('after three weeks of nothing: coupled exactly 4, uncoupled has no value', () => {
    expect(coupledRatio(800, [0, 0, 0])).toBe(4);
    expect(uncoupledRatio(800, [0, 0, 0])).toBeUndefined();
    expect(coupledRatio(0, [0, 0, 0])).toBeUndefined();
  });
});

// Williams S et al., Br J Sports Med 2017;51(3):209-210: lambda = 2 / (N + 1).
describe('exponentially weighted means (Williams)', () => {
  const LOADS = [300, 0, 400, 200, 0];
  it.each([
    [1, 300, 300],
    [2, 225, 279.3103],
    [3, 268.75, 287.6338],
    [4, 251.5625, 281.5901],
    [5, 188.671875, 262.1701],
  ])('after %i days: %f over 7 and %f over 28 days (own computation)', (days, short, long) => {
    expect(ewma(LOADS.slice(0, days), 7)).toBeCloseTo(short, 6);
    expect(ewma(LOADS.slice(0, days), 28)).toBeCloseTo(long, 4);
  });
  it('a constant load for 21 days and 5/3 of it for 7: rolling 1.43, weighted 1.25, as the first athlete printed', () => {
    const loads = [...Array<number>(21).fill(300), ...Array<number>(7).fill(500)];
    expect(coupledRatio(3_500, [2_100, 2_100, 2_100])).toBeCloseTo(1.43, 2);
    expect((ewma(loads, 7) ?? 0) / (ewma(loads, 28) ?? 1)).toBeCloseTo(1.25, 2);
  });
  it('long at 100, then 7 days at 200: 186.6516, 139.3598, ratio 1.3394 (own computation)', () => {
    const loads = [...Array<number>(600).fill(100), ...Array<number>(7).fill(200)];
    expect(ewma(loads, 7)).toBeCloseTo(186.6516, 4);
    expect(ewma(loads, 28)).toBeCloseTo(139.3598, 4);
  });
  it('minds when a load fell, as a rolling mean does not: 1,000 AU six days ago 0.5773, today 2.1617', () => {
    const flat = Array<number>(21).fill(600 / 7);
    const rest = Array<number>(6).fill(0);
    const ratio = (loads: number[]) => (ewma(loads, 7) ?? 0) / (ewma(loads, 28) ?? 1);
    expect(ratio([...flat, 1_000, ...rest])).toBeCloseTo(0.5773, 4);
    expect(ratio([...flat, ...rest, 1_000])).toBeCloseTo(2.1617, 4);
  });
  // Part of the seed left in the mean of 28 days: why it is shown from day 42 on.
  it.each([
    [28, 0.1352],
    [35, 0.082],
    [42, 0.0497],
    [56, 0.0183],
  ])('%i days after the seed %f of it is left (own computation)', (days, left) => {
    expect(ewma([1, ...Array<number>(days).fill(0)], 28)).toBeCloseTo(left, 4);
  });
});
