import type { ClientView } from '../types.ts';
import { counted } from '../words.ts';
import type { Amount, Measure } from './types.ts';

/**
 * Days with a check-in, in the days of the window against as many before. Silence is what is measured here, so unknown
 * days count as silent; days that were said to be off are left out, and the count is taken up to the whole window.
 */
export const quietSince: Measure = ({ before, after, windowDays, limits }) => {
  const of = (view: ClientView): Amount => {
    const days = view.days.slice(-windowDays);
    const here = days.filter((day) => day.state !== 'off').length;
    if (here * 2 < windowDays) return { missing: `${here} of ${counted(windowDays, 'day')} not away` };
    const told = days.filter((day) => day.checkIns.length > 0 && day.state !== 'off').length;
    return { value: (told / here) * windowDays, said: `${told} of ${counted(here, 'day')}` };
  };
  return {
    what: `days with a check-in, in ${windowDays} days`,
    unit: 'days',
    lowerIsBetter: false,
    tolerance: limits['betterSince.checkInDays'],
    before: of(before),
    after: of(after),
  };
};
