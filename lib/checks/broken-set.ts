import type { HistoryRung, HistorySet } from '#lib/domain/history.ts';
import { hasResult } from './set-result.ts';

/** Whether a planned set was cut short, not clean or failed. Ranges are measured, not failed. */
export function isBroken(set: HistorySet, rung: HistoryRung): boolean {
  if (!hasResult(set) || !set.clean) return true;
  const planned = set.planned ?? 0;
  switch (rung.measure) {
    case 'range-up':
    case 'range-down':
      return false;
    case 'made-tried':
      return set.value === 0 || (set.tried !== null && set.tried < planned && set.value < planned);
    default:
      return set.value < planned;
  }
}
