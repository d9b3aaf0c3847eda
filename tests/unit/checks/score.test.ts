import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scoreOf } from '#lib/checks/score.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { HistoryRung, HistorySet } from '#lib/domain/history.ts';
import { aRung, aSet, sets } from '#tests/fixtures/history-builders.ts';

const RUNG = aRung({ pass: { sets: 3, target: 20, days: 2, tries: null }, measure: 'hold' });
const score = (done: HistorySet[], rung: HistoryRung = RUNG) => scoreOf(rung, done, 'both', DEFAULT_LIMITS);

describe('scoreOf', () => {
  it('is the share of the pass mark: best three clean sets, none counted over the target', () => {
    expect(score(sets([20, 20, 20]))).toBe(1);
    expect(score(sets([30, 15, 10]))).toBeCloseTo(45 / 60, 12);
    expect(score(sets([5, 20, 20, 20]))).toBe(1);
  });
  it('counts sets that were not clean as nothing', () => {
    expect(score([...sets([20, 20]), aSet({ value: 20, clean: false })])).toBeCloseTo(40 / 60, 12);
  });
  it('needs at least half of the sets', () => {
    expect(score(sets([20]))).toBeUndefined();
    expect(score(sets([20, 20]))).toBeCloseTo(40 / 60, 12);
    expect(score(sets([20]), { ...RUNG, pass: { ...RUNG.pass, sets: 2 } })).toBe(0.5);
    expect(score([])).toBeUndefined();
  });
  it('takes the weaker side, and knows nothing without both', () => {
    const each = { ...RUNG, eachSide: true };
    const sides = (left: number[], right: number[]) => [
      ...sets(left, { side: 'left' }),
      ...sets(right, { side: 'right' }),
    ];
    expect(score(sides([20, 20, 20], [10, 10, 10]), each)).toBe(0.5);
    expect(score(sides([20, 20, 20], []), each)).toBeUndefined();
    expect(scoreOf(each, sides([20, 20, 20], []), 'left', DEFAULT_LIMITS)).toBe(1);
  });
  it('counts tries made, by the tries of the pass mark', () => {
    const tries = {
      ...RUNG,
      measure: 'made-tried' as const,
      pass: { sets: 1, target: 8, days: 2, tries: 10 },
    };
    const tried = (value: number, count: number) => [aSet({ value, tried: count })];
    expect(score(tried(8, 10), tries)).toBe(1);
    expect(score(tried(4, 10), tries)).toBe(0.5);
    expect(score(tried(8, 20), tries)).toBe(0.5);
    expect(score(tried(5, 5), tries)).toBeCloseTo(5 / 8, 12);
    expect(score(tried(4, 4), tries)).toBeUndefined();
  });
  it('reads ranges in which less is better', () => {
    const down = {
      ...RUNG,
      measure: 'range-down' as const,
      pass: { sets: 1, target: 10, days: 2, tries: null },
    };
    expect(score(sets([10]), down)).toBe(1);
    expect(score(sets([20]), down)).toBe(0.5);
    expect(score(sets([5]), down)).toBe(1);
  });
  it('takes the best of many sets, whatever their order, and all of one value', () => {
    expect(score(sets([5, 10, 15, 20]))).toBeCloseTo(45 / 60, 12);
    expect(score(sets([20, 15, 10, 5]))).toBeCloseTo(45 / 60, 12);
    expect(score(sets([10, 10, 10, 10, 10]))).toBe(0.5);
    expect(score(sets([5, 20, 20, 19]))).toBeCloseTo(59 / 60, 12);
  });
  it('is whole at a target of 0: flat hands, a body on the floor', () => {
    const pass = { sets: 1, target: 0, days: 2, tries: null };
    expect(score(sets([0]), { ...RUNG, measure: 'range-down', pass })).toBe(1);
    expect(score(sets([2]), { ...RUNG, measure: 'range-down', pass })).toBe(0);
    expect(score(sets([0]), { ...RUNG, pass })).toBe(1);
    expect(score(sets([3]), { ...RUNG, pass })).toBe(1);
  });
  it('lies between 0 and 1, and never falls with a better set', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 2, maxLength: 6 }),
        fc.nat(5),
        (values, at) => {
          const before = score(sets(values)) ?? Number.NaN;
          const after =
            score(sets(values.map((value, index) => (index === at ? value + 3 : value)))) ?? Number.NaN;
          expect(before).toBeGreaterThanOrEqual(0);
          expect(after).toBeLessThanOrEqual(1);
          expect(after).toBeGreaterThanOrEqual(before - 1e-12);
        },
      ),
      { numRuns: 1000 },
    );
  });
});
