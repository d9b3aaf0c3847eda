import type { HistoryCheckIn } from '#lib/domain/history.ts';
import type { ClientView } from '../types.ts';
import { counted } from '../words.ts';
import type { Amount, Measure } from './types.ts';

/** The share of the check-ins of 7 days in which this danger sign was told. */
export const dangerSignSince: Measure = ({ before, after, followed, limits }) => {
  const of = (view: ClientView): Amount => {
    const checkIns = view.days.slice(-limits['week.days']).flatMap((day) => day.checkIns);
    const needed = limits['betterSince.painCheckIns'];
    if (checkIns.length < needed) return { missing: `${checkIns.length} of ${counted(needed, 'check-in')}` };
    const told = checkIns.filter((checkIn) => tells(checkIn, followed.subject.key)).length;
    return { value: told / checkIns.length, said: `${told} of ${counted(checkIns.length, 'check-in')}` };
  };
  return {
    what: 'check-ins that tell this sign, in 7 days',
    unit: 'of all check-ins',
    lowerIsBetter: true,
    tolerance: limits['betterSince.signShare'],
    before: of(before),
    after: of(after),
  };
};

function tells(checkIn: HistoryCheckIn, key: string): boolean {
  return checkIn.dangerSigns.some(
    ({ sign, region, side }) => `${sign}:${region ?? 'any'}:${side ?? 'any'}` === key,
  );
}
