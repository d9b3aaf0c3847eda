import { addDays } from '#lib/domain/local-date.ts';
import { isBroken } from '../broken-set.ts';
import { rungDays } from '../rung-days.ts';
import type { ClientView } from '../types.ts';
import { counted } from '../words.ts';
import type { Amount, Measure } from './types.ts';

/**
 * The share of planned sets that were cut short, not clean or failed, on the whole ladder: the answer to a rung that is
 * too hard is nearly always another rung, and planned sets that are clean there are what was wanted.
 */
export const hardSince: Measure = ({ before, after, followed, windowDays, limits }) => {
  const of = (view: ClientView): Amount => {
    const from = addDays(view.asOf.date, 1 - windowDays);
    const dates = new Set<string>();
    let planned = 0;
    let broken = 0;
    for (const rung of view.rungs.values()) {
      if (rung.ladderId !== followed.subject.ladderId) continue;
      for (const day of rungDays(view, rung.id)) {
        if (day.date < from) continue;
        for (const set of day.sets) {
          if (set.planned === null) continue;
          dates.add(day.date);
          planned += 1;
          if (isBroken(set, rung)) broken += 1;
        }
      }
    }
    const needed = limits['betterSince.hardTrainingDays'];
    if (dates.size < needed)
      return { missing: `${dates.size} of ${counted(needed, 'training day')} with planned sets` };
    return { value: broken / planned, said: `${broken} of ${planned}` };
  };
  return {
    what: `planned sets of the ladder cut short, not clean or failed, in ${windowDays} days`,
    unit: 'of the planned sets',
    lowerIsBetter: true,
    tolerance: limits['betterSince.hardShare'],
    before: of(before),
    after: of(after),
  };
};
