import { proposeDose } from '../dose.ts';
import type { DrillLine } from './drill-line.ts';
import { RANGE_MINUTES } from './gap-numbers.ts';
import type { GapRung, SideSeen } from './gap-types.ts';

/** What to start with on a rung, from the result in the assessment where it was on this rung; ranges by minutes. */
export function firstDose(
  rung: GapRung,
  seen: SideSeen | undefined,
): Pick<DrillLine, 'sets' | 'target' | 'minutes'> {
  if (rung.measure === 'range-up' || rung.measure === 'range-down')
    return { sets: 1, target: null, minutes: RANGE_MINUTES };
  const known = seen?.rungId === rung.id && seen.value !== null && rung.measure !== 'made-tried';
  const results = known
    ? [{ values: Array<number>(seen.sets ?? 1).fill(seen.value ?? 0), whole: seen.clean !== false }]
    : [];
  const { sets, target } = proposeDose(rung, results);
  return { sets, target, minutes: null };
}
