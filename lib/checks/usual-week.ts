import { median } from '#lib/stats/median.ts';
import { medianAbsoluteDeviation } from '#lib/stats/median-absolute-deviation.ts';
import type { LoadSeries } from './load-series.ts';
import { oncePerView } from './once-per-view.ts';
import type { Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';

/** Total of the `days` days up to and with `end`, and how many of them are known: with fewer it is a lower bound. */
export type Total = { total: number; known: number; of: number };

export function totalUpTo(series: LoadSeries, end: number, days: number): Total {
  let total = 0;
  let known = 0;
  for (let index = Math.max(0, end - days + 1); index <= end; index += 1) {
    if (series.known[index] !== 1) continue;
    known += 1;
    total += series.values[index] ?? 0;
  }
  return { total, known, of: days };
}

export type UsualWeek =
  | { enough: true; usual: number; weeks: number; totals: readonly number[] }
  | { enough: false; weeks: number; needed: number };

/**
 * What one week of a series normally comes to: the median of up to 8 ordinary weeks among the last 10 that do not
 * overlap and end 7 days before the last day. An ordinary week has all 7 days known, no day off and no planned easy day. Fewer than 4 of them: how many there are.
 * `newest`: index of the last day of the newest week looked at, when not 7 days ago.
 */
export function usualWeek(view: ClientView, series: LoadSeries, limits: Limits, newest?: number): UsualWeek {
  const length = limits['week.days'];
  const ends = ordinaryWeeks(view, series.known, limits, newest ?? view.days.length - 1 - length);
  const totals: number[] = [];
  for (const end of ends) {
    let total = 0;
    for (let index = end - length + 1; index <= end; index += 1) total += series.values[index] ?? 0;
    totals.push(total);
  }
  const usual = median(totals);
  const needed = limits['week.usualAtLeast'];
  if (usual === undefined || totals.length < needed) return { enough: false, weeks: totals.length, needed };
  return { enough: true, usual, weeks: totals.length, totals };
}

/** Spread of the ordinary weeks: 1.4826 x median absolute deviation. */
export function spreadOf({ totals }: { totals: readonly number[] }): number {
  return medianAbsoluteDeviation(totals) ?? 0;
}

/** Days that may be part of an ordinary week: not off, not in an easy week. */
const ordinaryDays = oncePerView(({ days }) => {
  const ordinary = new Uint8Array(days.length);
  days.forEach(({ state, easy }, index) => {
    if (state !== 'off' && !easy) ordinary[index] = 1;
  });
  return ordinary;
});

type Weeks = { known: LoadSeries['known']; limits: Limits; newest: number; ends: readonly number[] };
const weeksOf = oncePerView((): Weeks[] => []);

/** Last days of the ordinary weeks, newest first. All tissues have the same known days, so the same weeks. */
function ordinaryWeeks(
  view: ClientView,
  known: LoadSeries['known'],
  limits: Limits,
  newest: number,
): readonly number[] {
  const found = weeksOf(view);
  for (const one of found) {
    if (one.known === known && one.limits === limits && one.newest === newest) return one.ends;
  }
  const ends: number[] = [];
  const length = limits['week.days'];
  const most = limits['week.usualOf'];
  for (let back = 0; back < limits['week.usualAmong'] && ends.length < most; back += 1) {
    const end = newest - back * length;
    if (isOrdinary(view, known, end, length)) ends.push(end);
  }
  found.push({ known, limits, newest, ends });
  return ends;
}

function isOrdinary(view: ClientView, known: LoadSeries['known'], end: number, length: number): boolean {
  if (end - length + 1 < 0) return false;
  const ordinary = ordinaryDays(view);
  for (let index = end - length + 1; index <= end; index += 1) {
    if (ordinary[index] !== 1 || known[index] !== 1) return false;
  }
  return true;
}
