import { describe, expect, it } from 'vitest';
import type { OutsideValue } from './outside-value.ts';
import { BODY } from './values/body.ts';
import { CHARTS } from './values/charts.ts';
import { COUNTS } from './values/counts.ts';
import { LOAD } from './values/load.ts';
import { STILLS } from './values/still.ts';
import { TREND } from './values/trend.ts';

const ALL: OutsideValue[] = [...TREND, ...COUNTS, ...CHARTS, ...LOAD, ...BODY, ...STILLS];
const list = <T>(values: T | readonly T[]): readonly T[] => (Array.isArray(values) ? values : [values as T]);

describe.each(ALL)('$what ($basis: $source)', ({ value, got, within }) => {
  it('comes out the same here', () => {
    const [expected, found] = [list(value), list(got())];
    expect(found).toHaveLength(expected.length);
    expected.forEach((each, index) => {
      expect(Math.abs((found[index] ?? Number.NaN) - each)).toBeLessThanOrEqual(within);
    });
  });
});

describe('the numbers from outside', () => {
  const published = ALL.filter(({ basis }) => basis === 'printed' || basis === 'derived');
  const yearOf = (source: string) => Number(/\b(1[89]|20)\d\d\b/.exec(source)?.[0]);

  it('are at least 90 from print, each another question', () => {
    expect(new Set(published.map(({ what, source }) => `${what} ${source}`)).size).toBeGreaterThanOrEqual(90);
    expect(new Set(ALL.map(({ what, source }) => `${what} ${source}`)).size).toBe(ALL.length);
  });
  it.each(published)('$what: has a source with a year, and the arithmetic where it is derived', (row) => {
    expect(row.source.split(' ').length).toBeGreaterThanOrEqual(3);
    expect(yearOf(row.source)).toBeGreaterThan(1850);
    expect(row.source).not.toMatch(/from memory|common practice|no source|own\b/i);
    if (row.basis === 'derived') expect(row.how ?? '').not.toBe('');
  });
});
