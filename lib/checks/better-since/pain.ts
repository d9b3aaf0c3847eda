import { addDays } from '#lib/domain/local-date.ts';
import { median } from '#lib/stats/median.ts';
import { painSeries } from '../pain-series.ts';
import type { ClientView } from '../types.ts';
import { counted, plainNumber } from '../words.ts';
import type { Amount, Measure } from './types.ts';

/**
 * The median of the worst pain there, over the check-ins of 7 days: of the days before the step, and of the last days of
 * the window. The median and not the peak: one bad evening is why a step is taken, and the next evening is nearly always
 * better than the worst one.
 */
export const painSince: Measure = ({ before, after, followed, limits }) => {
  const of = (view: ClientView): Amount => {
    const from = addDays(view.asOf.date, 1 - limits['week.days']);
    const key = `${followed.subject.region}:${followed.subject.side}`;
    const values = (painSeries(view).find((series) => series.key === key)?.points ?? []).flatMap((point) =>
      point.date >= from && point.worst !== undefined ? [point.worst] : [],
    );
    const needed = limits['betterSince.painCheckIns'];
    if (values.length < needed)
      return { missing: `${values.length} of ${counted(needed, 'check-in')} that speak of it` };
    const value = median(values) ?? 0;
    return { value, said: `${plainNumber(value)} (${counted(values.length, 'check-in')})` };
  };
  return {
    what: 'median of the worst pain there, in 7 days',
    unit: 'of 10',
    lowerIsBetter: true,
    tolerance: limits['betterSince.painPoints'],
    before: of(before),
    after: of(after),
  };
};
