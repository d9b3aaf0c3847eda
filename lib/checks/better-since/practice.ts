import { plannedPractice } from '../planned-practice.ts';
import { standingsOf } from '../standings.ts';
import type { ClientView } from '../types.ts';
import { counted } from '../words.ts';
import type { Amount, Measure } from './types.ts';

/** Of the logged sessions of 28 days that have the ladder's rung in the plan, the share in which it was trained. */
export const practiceSince: Measure = ({ before, after, followed, limits }) => {
  const of = (view: ClientView): Amount => {
    const { ladderId, side } = followed.subject;
    const standing = standingsOf(view).find(
      (one) =>
        one.rung.ladderId === ladderId && (one.side === 'both' || side === 'both' || one.side === side),
    );
    if (!standing) return { missing: 'no rung of this ladder is set' };
    const { planned, trained } = plannedPractice(view, standing, limits);
    const needed = limits['tooLittleTime.expected'];
    if (planned < needed)
      return { missing: `${planned} of ${counted(needed, 'logged session')} with it in the plan` };
    return { value: trained / planned, said: `${trained} of ${planned}` };
  };
  return {
    what: 'logged sessions of 28 days that have it in the plan, in which it was trained',
    unit: 'of these sessions',
    lowerIsBetter: false,
    tolerance: limits['betterSince.practiceShare'],
    before: of(before),
    after: of(after),
  };
};
