import { median } from '#lib/stats/median.ts';
import { medianAbsoluteDeviation } from '#lib/stats/median-absolute-deviation.ts';

const WEEK = 7;
const WEEKS_WANTED = 8;
const WEEKS_NEEDED = 4;
const DAYS_LOOKED_AT = 70;

/**
 * Usual week of a daily series for the strip: median and spread (1.4826 x MAD) of up to eight ordinary weeks
 * (seven known days, not overlapping, the newest ending seven days ago, within ten weeks). `undefined` in
 * the series is an unknown or off day. Undefined with fewer than four such weeks.
 */
export function usualOf(daily: (number | undefined)[]): { median: number; spread: number } | undefined {
  const weeks = ordinaryWeeks(daily);
  if (weeks.length < WEEKS_NEEDED) return undefined;
  return { median: median(weeks) ?? 0, spread: medianAbsoluteDeviation(weeks) ?? 0 };
}

function ordinaryWeeks(daily: (number | undefined)[]): number[] {
  const sums: number[] = [];
  const newest = daily.length - WEEK;
  let end = newest;
  while (end >= WEEK && end > newest - DAYS_LOOKED_AT && sums.length < WEEKS_WANTED) {
    const week = daily.slice(end - WEEK, end);
    const known = week.filter((value) => value !== undefined);
    if (known.length === WEEK) sums.push(known.reduce((sum, value) => sum + value, 0));
    end -= known.length === WEEK ? WEEK : 1;
  }
  return sums;
}
