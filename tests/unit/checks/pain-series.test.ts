import { describe, expect, it } from 'vitest';
import { painSeries, usualPain } from '#lib/checks/pain-series.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryPain } from '#lib/domain/history.ts';
import { aCheckIn, aHistory, aPain, day, evening } from '#tests/fixtures/history-builders.ts';

const seriesOf = (pain: HistoryPain[], over = {}) =>
  painSeries(buildView(aHistory({ checkIns: [aCheckIn(0, { pain, ...over })] }), evening(0)));
const point = (pain: HistoryPain[], over = {}) => seriesOf(pain, over)[0]?.points[0];

describe('what a check-in says about a place that hurts', () => {
  it('is kept by place, in order of their names, muscles left out', () => {
    const named = seriesOf([
      aPain(2, { region: 'neck', side: 'middle' }),
      aPain(2, { region: 'elbow-inner', side: 'right' }),
      aPain(2, { region: 'elbow-inner', side: 'left' }),
      aPain(2, { region: 'knee', kind: 'muscle' }),
    ]);
    expect(named.map((one) => one.key)).toEqual(['elbow-inner:left', 'elbow-inner:right', 'neck:middle']);
  });
  it('has its worst moment, its morning and the highest of both', () => {
    const pain = [aPain(2, { moment: 'during' }), aPain(3), aPain(5, { moment: 'morning' })];
    expect(point(pain)).toMatchObject({ worst: 3, morning: 5, highest: 5, danger: false });
    expect(point([aPain(4, { moment: 'morning' })])).toMatchObject({ worst: undefined, morning: 4 });
    expect(
      point([aPain(4)], {
        dangerSigns: [{ sign: 'weakness', goneWithinMinute: false, region: null, side: null }],
      }),
    ).toMatchObject({ danger: true });
  });
  it('is a value also where that value is 0', () => {
    expect(point([aPain(0)])).toMatchObject({ worst: 0, morning: undefined, highest: 0 });
  });
  const during = (value: number, usual: boolean | null) => aPain(value, { moment: 'during', usual });
  const later = (value: number, usual: boolean | null) => aPain(value, { moment: 'after', usual });
  it.each([
    ['the highest is', [during(4, null), later(6, true)], true],
    ['the highest is not', [during(4, true), later(6, null)], false],
    ['both of the highest are', [during(6, true), later(6, true)], true],
    ['only the first of two alike is', [during(6, true), later(6, null)], false],
    ['only the second of two alike is', [during(6, null), later(6, true)], false],
    ['a lower one is new', [during(2, false), later(6, true)], false],
  ])('is the usual only where %s', (_name, pain, usual) => {
    expect(point(pain)?.usual).toBe(usual);
  });
});

describe('usual pain', () => {
  /** Mornings of 4 on the days named; asked on day 60. Told at intake: 1. */
  const usual = (...daysAgo: number[]) => {
    const checkIns = daysAgo.map((ago) => aCheckIn(60 - ago, { pain: [aPain(4, { moment: 'morning' })] }));
    const intakePain = [{ region: 'elbow-inner' as const, side: 'right' as const, value: 1, sinceWeeks: 8 }];
    const [series] = painSeries(buildView(aHistory({ client: { intakePain }, checkIns }), evening(60)));
    return series && usualPain(series, 'morning', day(60), DEFAULT_LIMITS);
  };
  it('is the median of check-ins 14 to 56 days before, both days with', () => {
    expect(usual(56, 40, 30, 20, 14)).toBe(4);
    expect(usual(57, 40, 30, 20, 14)).toBe(1);
    expect(usual(56, 40, 30, 20, 13)).toBe(1);
  });
  it('is what was told at intake with under five of them', () => {
    expect(usual(50, 40, 30, 20)).toBe(1);
    expect(usual()).toBe(1);
  });
});
