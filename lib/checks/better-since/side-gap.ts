import { addDays } from '#lib/domain/local-date.ts';
import { median } from '#lib/stats/median.ts';
import { rungDays } from '../rung-days.ts';
import { percentBehind, sidePairs } from '../side-pairs.ts';
import type { ClientView } from '../types.ts';
import { counted, plainNumber } from '../words.ts';
import type { Amount, Measure } from './types.ts';

/**
 * The median gap of the last six pairs of the rung, whichever side is behind: of the 56 days before the step, and of
 * the days since. A gap that changes sides has not become smaller.
 */
export const sideGapSince: Measure = ({ before, after, followed, limits }) => {
  const of = (view: ClientView, since: string): Amount => {
    const rung = view.rungs.get(followed.subject.rungId ?? '');
    const days = rung ? rungDays(view, rung.id).filter((day) => day.date > since) : [];
    const pairs = rung ? sidePairs(days, rung).slice(-limits['sideGap.lastPairs']) : [];
    const needed = limits['betterSince.pairs'];
    if (pairs.length < needed)
      return { missing: `${pairs.length} of ${counted(needed, 'pair')} of this rung that say something` };
    const value = Math.abs(median(pairs.map((pair) => percentBehind(pair, 'left'))) ?? 0);
    return { value, said: `${plainNumber(value, 0)} %` };
  };
  return {
    what: 'median gap of the last 6 pairs of the rung',
    unit: '% of the larger side',
    lowerIsBetter: true,
    tolerance: limits['betterSince.gapPoints'],
    before: of(before, addDays(before.asOf.date, -limits['sideGap.days'])),
    after: of(after, followed.from),
  };
};
