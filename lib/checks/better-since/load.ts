import { reaches } from '../compare.ts';
import { type LoadSeries, loadsOf } from '../load-series.ts';
import type { LimitId, Limits } from '../thresholds.ts';
import { isTissue, TISSUE_LABELS } from '../tissues.ts';
import type { ClientView, TissueSide } from '../types.ts';
import { totalUpTo, usualWeek } from '../usual-week.ts';
import { plainNumber } from '../words.ts';
import type { Amount, Compared, Measure, Measured } from './types.ts';

/**
 * The 7-day total against the usual week as it was when the step was taken, the same for both, so that a usual week that
 * follows the load makes nothing better. Never under 1: less than usual is not better than usual. Unknown days make a
 * total a lower bound, which can show that it is worse and never that it is better.
 */
export const loadSince: Measure = (compared) => {
  const places = placesOf(compared);
  const all = places.map((place) => ofPlace(compared, place));
  // Of both sides of a tissue, the one that was higher over its usual week.
  return all.reduce((worst, one) => (valueIn(one.before) > valueIn(worst.before) ? one : worst));
};

type Place = { words: string; key: TissueSide | undefined };

const SESSION: Place = { words: 'session load', key: undefined };

/** Session load where that itself was over the line, else the tissue that the reason named first. */
function placesOf({ followed, limits }: Compared): [Place, ...Place[]] {
  const { evidence, kind } = followed;
  const [named] = String(evidence.tissues ?? '').split(',');
  const [tissue, side] = (named ?? '').split(':');
  if (kind === 'stacked-stress' || !isTissue(tissue)) return [SESSION];
  const isSession =
    typeof evidence.ratio === 'number' && reaches(evidence.ratio, limits['loadJump.weekRatio']);
  if (kind === 'load-jump' && isSession) return [SESSION];
  const at = (one: 'left' | 'right'): Place => ({
    words: `load on ${TISSUE_LABELS[tissue]}, ${one}`,
    key: `${tissue}:${one}`,
  });
  if (side === 'left' || side === 'right') return [at(side)];
  return [at('left'), at('right')];
}

function ofPlace({ before, after, limits }: Compared, place: Place): Measured {
  const usual = usualWeek(before, seriesOf(before, place), limits);
  const of = (view: ClientView): Amount => {
    if (!usual.enough) return { missing: `${usual.weeks} of ${usual.needed} ordinary weeks known` };
    if (usual.usual <= 0) return { missing: 'nothing in the usual week to compare with' };
    const { total, known, of: days } = lastWeek(view, seriesOf(view, place), limits);
    const ratio = total / usual.usual;
    const said = `${plainNumber(ratio, 2)} x usual${known < days ? `, ${known} of ${days} days known` : ''}`;
    return { value: Math.max(1, ratio), said, atLeast: known < days };
  };
  return {
    what: `7 days of ${place.words} against the usual week before`,
    unit: 'x usual week, 1 and under counts as 1',
    lowerIsBetter: true,
    tolerance: limits['betterSince.loadRatio'],
    before: of(before),
    after: of(after),
  };
}

const EDGE: LimitId = 'day.restGapDays';

/** The 7 days up to the last known day: the days after a check-in are unknown until the next one. */
function lastWeek(view: ClientView, series: LoadSeries, limits: Limits) {
  const last = view.days.length - 1;
  let end = last;
  while (end > last - limits[EDGE] && series.known[end] !== 1) end -= 1;
  return totalUpTo(series, series.known[end] === 1 ? end : last, limits['week.days']);
}

function seriesOf(view: ClientView, { key }: Place): LoadSeries {
  const { session, tissues } = loadsOf(view);
  if (key === undefined) return session;
  return tissues.get(key) ?? { values: new Float64Array(view.days.length), known: knownDays(view) };
}

/** A tissue that was never loaded: zero on every known day. */
function knownDays(view: ClientView): Uint8Array {
  return Uint8Array.from(view.days, (day) => (day.state === 'unknown' ? 0 : 1));
}

function valueIn(amount: Amount): number {
  return 'value' in amount ? amount.value : 0;
}
