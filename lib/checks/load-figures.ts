import { coupledRatio } from '#lib/stats/coupled-ratio.ts';
import { ewma } from '#lib/stats/ewma.ts';
import { type Monotony, monotony } from '#lib/stats/monotony.ts';
import { uncoupledRatio } from '#lib/stats/uncoupled-ratio.ts';
import type { LoadSeries } from './load-series.ts';
import { daysHere, newStartAt } from './new-start.ts';
import type { Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';
import { type Total, totalUpTo, type UsualWeek, usualWeek } from './usual-week.ts';

export type LoadFigures = {
  week: Total;
  usual: UsualWeek;
  /** Week over the mean of the 3 before, and over the mean of all 4; undefined unless all 28 days are known. */
  uncoupled: number | undefined;
  coupled: number | undefined;
  /** Of the last 28 days, how many are known. */
  known28: Total;
  /** Exponentially weighted daily means; undefined under 42 days here. Unknown days are left out, not filled in. */
  ewmaShort: number | undefined;
  ewmaLong: number | undefined;
  /** Change against the week before, %; undefined when either week has unknown days or that week was 0. */
  weekToWeekPercent: number | undefined;
  /** Over the last 7 calendar days, or why there is no number. */
  monotony: Monotony | { reason: 'unknown-days' };
};

/** Everything the client page shows of one series up to the last day of the view, in the unit of the series. */
export function loadFigures(view: ClientView, series: LoadSeries, limits: Limits): LoadFigures {
  const last = view.days.length - 1;
  const length = limits['week.days'];
  const weekBack = (back: number) => totalUpTo(series, last - back * length, length);
  const [week, one, two, three] = [weekBack(0), weekBack(1), weekBack(2), weekBack(3)];
  const known28 = totalUpTo(series, last, 4 * length);
  const complete = known28.known === known28.of;
  const before: [number, number, number] = [one.total, two.total, three.total];
  const longEnough = daysHere(view) >= limits['ewma.afterDays'];
  const daily = longEnough ? knownValues(series, newStartAt(view)) : [];
  return {
    week,
    usual: usualWeek(view, series, limits),
    uncoupled: complete ? uncoupledRatio(week.total, before) : undefined,
    coupled: complete ? coupledRatio(week.total, before) : undefined,
    known28,
    ewmaShort: longEnough ? ewma(daily, limits['ewma.shortDays']) : undefined,
    ewmaLong: longEnough ? ewma(daily, limits['ewma.longDays']) : undefined,
    weekToWeekPercent:
      week.known === length && one.known === length && one.total > 0
        ? ((week.total - one.total) / one.total) * 100
        : undefined,
    monotony: recentMonotony(series, last, limits['monotony.days']),
  };
}

/** Monotony of the last days; unknown days give a reason, not a number. */
export function recentMonotony(series: LoadSeries, last: number, days: number): LoadFigures['monotony'] {
  if (totalUpTo(series, last, days).known < days) return { reason: 'unknown-days' };
  return monotony([...series.values.subarray(last - days + 1, last + 1)]);
}

/** From the day on which the client began, or began again. */
function knownValues(series: LoadSeries, from: number): number[] {
  const values: number[] = [];
  for (let at = from; at < series.values.length; at += 1)
    if (series.known[at] === 1) values.push(series.values[at] as number);
  return values;
}
