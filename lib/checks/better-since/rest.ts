import type { ClientView } from '../types.ts';
import { counted } from '../words.ts';
import type { Amount, Measure } from './types.ts';

const RESTED: readonly string[] = ['rest', 'taken-as-rest', 'off'];

/**
 * Days of rest in the days of the window against as many before. An unknown day may have been one: then the count is a
 * lower bound.
 */
export const restSince: Measure = ({ before, after, windowDays, limits }) => {
  const of = (view: ClientView): Amount => {
    const days = view.days.slice(-windowDays);
    const known = days.filter((day) => day.state !== 'unknown').length;
    if (days.length < windowDays || known * 2 < windowDays)
      return { missing: `${known} of ${counted(windowDays, 'day')} known` };
    const value = days.filter((day) => RESTED.includes(day.state)).length;
    return { value, said: `${value} of ${counted(known, 'known day')}`, atLeast: known < windowDays };
  };
  return {
    what: `days of rest in ${windowDays} days`,
    unit: 'days',
    lowerIsBetter: false,
    tolerance: limits['betterSince.restDays'],
    before: of(before),
    after: of(after),
  };
};
