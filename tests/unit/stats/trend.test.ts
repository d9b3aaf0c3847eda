import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mannKendall } from '#lib/stats/mann-kendall.ts';
import { theilSen } from '#lib/stats/theil-sen.ts';

const points = fc.array(
  fc.record({ at: fc.integer({ min: 0, max: 60 }), value: fc.integer({ min: -20, max: 20 }) }),
  {
    minLength: 2,
    maxLength: 14,
  },
);
const distinct = fc.uniqueArray(
  fc.record({ at: fc.integer({ min: 0, max: 60 }), value: fc.integer({ min: -20, max: 20 }) }),
  { minLength: 2, maxLength: 14, selector: (point) => point.at },
);
const turned = (series: { at: number; value: number }[]) =>
  series.map(({ at, value }) => ({ at, value: -value }));

describe('mannKendall', () => {
  it('has no answer under two points, and p 1 when all values are equal', () => {
    expect(mannKendall([{ at: 1, value: 2 }])).toBeUndefined();
    expect(mannKendall([1, 2, 3].map((at) => ({ at, value: 5 })))?.p).toBe(1);
  });
  it('does not depend on the order of rows, and turns with the sign', () => {
    fc.assert(
      fc.property(points, (series) => {
        const result = mannKendall(series);
        expect(mannKendall([...series].reverse())?.s).toBe(result?.s);
        expect((mannKendall(turned(series))?.s ?? 0) + (result?.s ?? 0)).toBe(0);
      }),
      { numRuns: 1000 },
    );
  });
  it('stays a probability, and moves neither with shift nor with scale', () => {
    fc.assert(
      fc.property(distinct, (series) => {
        const result = mannKendall(series);
        const moved = mannKendall(series.map(({ at, value }) => ({ at: at + 7, value: value * 3 + 5 })));
        expect(result?.p).toBeGreaterThan(0);
        expect(result?.p).toBeLessThanOrEqual(1);
        expect(moved?.p).toBeCloseTo(result?.p ?? Number.NaN, 12);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('theilSen', () => {
  it('has no answer when all times are equal or for a broken confidence', () => {
    expect(
      theilSen(
        [1, 2].map((value) => ({ at: 3, value })),
        0.8,
      ),
    ).toBeUndefined();
    expect(
      theilSen(
        [1, 2].map((value) => ({ at: value, value })),
        1,
      ),
    ).toBeUndefined();
  });
  it('finds a straight line exactly', () => {
    const line = [0, 3, 7, 12].map((at) => ({ at, value: 2 + 0.5 * at }));
    expect(theilSen(line, 0.8)).toMatchObject({ slope: 0.5, lower: 0.5, upper: 0.5, intercept: 2 });
  });
  it('holds its slope between its limits, and widens with confidence', () => {
    fc.assert(
      fc.property(distinct, (series) => {
        const narrow = theilSen(series, 0.8);
        const wide = theilSen(series, 0.95);
        if (!narrow || !wide) return;
        expect(narrow.lower).toBeLessThanOrEqual(narrow.slope + 1e-9);
        expect(narrow.upper).toBeGreaterThanOrEqual(narrow.slope - 1e-9);
        expect(wide.lower).toBeLessThanOrEqual(narrow.lower);
        expect(wide.upper).toBeGreaterThanOrEqual(narrow.upper);
      }),
      { numRuns: 1000 },
    );
  });
  it('does not depend on the order of rows', () => {
    fc.assert(
      fc.property(points, (series) => {
        expect(theilSen([...series].reverse(), 0.8)).toEqual(theilSen(series, 0.8));
      }),
      { numRuns: 1000 },
    );
  });
});
