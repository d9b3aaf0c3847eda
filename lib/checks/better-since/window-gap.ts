import { addDays } from '#lib/domain/local-date.ts';
import { median } from '#lib/stats/median.ts';
import { bestHolds, daysOn, kindsOfHold } from '../holds-of-window.ts';
import type { ClientView } from '../types.ts';
import { plainNumber } from '../words.ts';
import type { Amount, Measure } from './types.ts';

const PERCENT = 100;

/** How far the medians of the best heel pulls and toe pulls are apart, % of the larger: 42 days before, and since. */
export const windowGapSince: Measure = ({ before, after, followed, limits }) => {
  const of = (view: ClientView, since: string): Amount => {
    const kind = kindsOfHold(view).find((one) => `window:${one.name}` === followed.subject.key);
    const holds = (rungs: Parameters<typeof daysOn>[1]) =>
      bestHolds(
        daysOn(view, rungs).filter((day) => day.date > since),
        rungs,
      );
    const [heel, toe] = [holds(kind?.over ?? []), holds(kind?.under ?? [])];
    const needed = limits['windowGap.holds'];
    if (heel.length < needed || toe.length < needed)
      return { missing: `${heel.length} and ${toe.length} of ${needed} days with heel pulls and toe pulls` };
    const [heelHold, toeHold] = [median(heel) ?? 0, median(toe) ?? 0];
    const larger = Math.max(heelHold, toeHold);
    const value = larger > 0 ? (Math.abs(heelHold - toeHold) / larger) * PERCENT : 0;
    return {
      value,
      said: `${plainNumber(value, 0)} % (heel pulls ${plainNumber(heelHold)} s, toe pulls ${plainNumber(toeHold)} s)`,
    };
  };
  return {
    what: 'distance of heel pulls and toe pulls, medians of the best holds',
    unit: '% of the longer',
    lowerIsBetter: true,
    tolerance: limits['betterSince.windowPoints'],
    before: of(before, addDays(before.asOf.date, -limits['windowGap.days'])),
    after: of(after, followed.from),
  };
};
