import { painLimit } from './pain-place.ts';
import { type PainPoint, type PainSeries, usualPain } from './pain-series.ts';
import type { Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';

export type Grade = 'stop' | 'reduce' | 'unknown' | 'careful' | 'fine';

/**
 * Grade of the check-ins at index `at` of a place (model after Thomee 1997 and Silbernagel 2007, rule own): stop from 6
 * or with a danger sign; reduce with a morning 2 above usual, or 1 above on two mornings running; unknown without a
 * morning; careful from 3; else fine. Under 18 one step stricter. Undefined outside the series.
 */
export function gradeAt(view: ClientView, series: PainSeries, at: number, limits: Limits): Grade | undefined {
  const point = series.points[at];
  if (!point) return undefined;
  if (point.danger || point.highest >= painLimit(view, 'grade.stop', limits)) return 'stop';
  const usual = usualPain(series, 'morning', point.date, limits);
  const above = (each: PainPoint | undefined) =>
    each?.morning === undefined ? undefined : each.morning - usual;
  const now = above(point);
  const before = above(series.points[at - 1]);
  const twice = limits['grade.reduceTwoMornings'];
  if (now !== undefined && now >= painLimit(view, 'grade.reduceMorning', limits)) return 'reduce';
  if (now !== undefined && before !== undefined && now >= twice && before >= twice) return 'reduce';
  if (now === undefined) return 'unknown';
  return (point.worst ?? 0) >= painLimit(view, 'grade.careful', limits) ? 'careful' : 'fine';
}
