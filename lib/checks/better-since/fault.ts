import { addDays } from '#lib/domain/local-date.ts';
import { FAULTS } from '#lib/domain/vocabulary.ts';
import { rungDays } from '../rung-days.ts';
import { hasResult } from '../set-result.ts';
import type { ClientView } from '../types.ts';
import { plainNumber } from '../words.ts';
import type { Amount, Measure } from './types.ts';

const PERCENT = 100;

/**
 * How much more often the fault comes on one side than on the other, in points of percent: of the sets of 42 days before,
 * and of the sets since. The distance of the sides, whichever has it more often: a fault that changes sides stays.
 */
export const faultSince: Measure = ({ before, after, followed, limits }) => {
  const fault = FAULTS.find((one) => one === followed.evidence.fault);
  const of = (view: ClientView, since: string): Amount => {
    const sets = rungDays(view, followed.subject.rungId ?? '')
      .filter((day) => day.counts && day.date > since)
      .flatMap((day) => day.sets.filter(hasResult));
    const left = sets.filter((set) => set.side === 'left');
    const right = sets.filter((set) => set.side === 'right');
    const needed = limits['oneSideFault.sets'];
    if (!fault || left.length < needed || right.length < needed)
      return { missing: `${left.length} and ${right.length} of ${needed} sets left and right` };
    const hits = (of: typeof sets) => of.filter((set) => set.faults.includes(fault)).length;
    const value = Math.abs(hits(left) / left.length - hits(right) / right.length) * PERCENT;
    return {
      value,
      said: `${plainNumber(value, 0)} points (left ${hits(left)} of ${left.length}, right ${hits(right)} of ${right.length})`,
    };
  };
  return {
    what: 'share of sets with the fault, one side less the other',
    unit: 'points of %',
    lowerIsBetter: true,
    tolerance: limits['betterSince.faultPoints'],
    before: of(before, addDays(before.asOf.date, -limits['oneSideFault.days'])),
    after: of(after, followed.from),
  };
};
