import type { Tissue } from '#lib/domain/vocabulary.ts';
import { median } from '#lib/stats/median.ts';
import { exceeds } from './compare.ts';
import { recentMonotony } from './load-figures.ts';
import { type Loads, loadsOf } from './load-series.ts';
import type { Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';
import { totalUpTo, usualWeek } from './usual-week.ts';

/** Newest day with anything known; the days after it say nothing yet. -1 when nothing is. */
export function lastKnownDay(view: ClientView): number {
  return view.days.findLastIndex((day) => day.state !== 'unknown');
}

/** Monotony over its limit across known days with the week over usual; the value, infinite when every day was alike. */
export function monotonous(view: ClientView, limits: Limits): number | undefined {
  const { session } = loadsOf(view);
  const last = lastKnownDay(view);
  const sessionsAWeek = view.planOn(view.asOf.date)?.sessionsPerWeek ?? 0;
  if (sessionsAWeek >= limits['noLetUp.monotonyMaxSessions']) return undefined;
  const week = limits['week.days'];
  const usual = usualWeek(view, session, limits, last - week);
  const total = totalUpTo(session, last, week).total;
  if (!usual.enough || !exceeds(total, limits['noLetUp.monotonyLoad'] * usual.usual)) return undefined;
  const found = recentMonotony(session, last, limits['noLetUp.monotonyDays']);
  if ('reason' in found) return found.reason === 'no-variation' ? Number.POSITIVE_INFINITY : undefined;
  return exceeds(found.monotony, limits['noLetUp.monotony']) ? found.monotony : undefined;
}

/** Known days in a row, up to the newest, that were all training days over a third of the median one. */
export function daysWithoutRest(view: ClientView, limits: Limits): number {
  const { session } = loadsOf(view);
  const last = lastKnownDay(view);
  if (view.days[last]?.state !== 'trained') return 0;
  const light = limits['noLetUp.lightShare'] * (median(trainingLoads(view, 0, last)) ?? 0);
  let count = 0;
  for (let index = last; index >= 0 && view.days[index]?.state === 'trained'; index -= 1) {
    if (session.known[index] === 1 && !exceeds(session.values[index] ?? 0, light)) break;
    count += 1;
  }
  return count;
}

export type HardDays = { pairs: number; tissue: Tissue; from: number };

/**
 * Pairs of days following each other on which one tissue and the session were both well over their medians of the
 * eight weeks before the fortnight; the tissue with most pairs. `undefined` when there are none, or too few days.
 */
export function hardDayPairs(view: ClientView, limits: Limits): HardDays | undefined {
  const last = lastKnownDay(view);
  const first = last - limits['noLetUp.hardDays'] + 1;
  const before = first - limits['noLetUp.hardBeforeWeeks'] * limits['week.days'];
  const loads = loadsOf(view);
  const usualSession = medianOfTraining(view, loads.session.values, before, first, limits);
  if (usualSession === undefined) return undefined;
  const hard = (index: number) =>
    exceeds(loads.session.values[index] ?? 0, limits['noLetUp.hardSession'] * usualSession);
  if (!hasPair(first, last, hard)) return undefined;
  let most: HardDays | undefined;
  for (const [key, series] of loads.tissues) {
    const usual = medianOfTraining(view, series.values, before, first, limits);
    if (usual === undefined || usual === 0) continue;
    const over = (index: number) =>
      hard(index) && exceeds(series.values[index] ?? 0, limits['noLetUp.hardTissue'] * usual);
    const pairs = pairsOf(first, last, over);
    if (pairs.length > (most?.pairs ?? 0)) {
      most = { pairs: pairs.length, tissue: key.split(':')[0] as Tissue, from: pairs[0] ?? first };
    }
  }
  return most;
}

function hasPair(first: number, last: number, is: (index: number) => boolean): boolean {
  return pairsOf(first, last, is).length > 0;
}

/** First days of the pairs of neighbours for which both hold. */
function pairsOf(first: number, last: number, is: (index: number) => boolean): number[] {
  const found: number[] = [];
  for (let index = first; index < last; index += 1) if (is(index) && is(index + 1)) found.push(index);
  return found;
}

function medianOfTraining(
  view: ClientView,
  values: Loads['session']['values'],
  from: number,
  until: number,
  limits: Limits,
): number | undefined {
  const there: number[] = [];
  for (let index = Math.max(0, from); index < until; index += 1) {
    if (view.days[index]?.state === 'trained') there.push(values[index] ?? 0);
  }
  return there.length < limits['noLetUp.daysAtLeast'] ? undefined : median(there);
}

function trainingLoads(view: ClientView, from: number, to: number): number[] {
  const { session } = loadsOf(view);
  const found: number[] = [];
  for (let index = from; index <= to; index += 1) {
    if (view.days[index]?.state === 'trained' && session.known[index] === 1)
      found.push(session.values[index] ?? 0);
  }
  return found;
}
