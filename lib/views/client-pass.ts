import type { HistoryCheckIn, HistoryRung, HistorySet } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';

/**
 * Share of the pass mark that one day's clean sets reach on a rung and side: sum of min(set, target) over the best
 * n sets / (n x target), 0-1. Sets taken over as planned without a value count for nothing. Undefined: no set done,
 * or a rung whose target is 0 or counted downwards.
 */
export function shareOfPassMark(
  checkIns: readonly HistoryCheckIn[],
  rung: HistoryRung,
  side: Side,
): number | undefined {
  const { sets: needed, target } = rung.pass;
  const done = setsOn(checkIns, rung.id, side).filter(
    (set) => set.clean && set.value !== null && set.how !== 'as-planned',
  );
  if (done.length === 0 || target <= 0 || rung.measure === 'range-down') return undefined;
  const best = done
    .map((set) => Math.min(set.value ?? 0, target))
    .sort((a, b) => b - a)
    .slice(0, needed);
  return best.reduce((sum, value) => sum + value, 0) / (needed * target);
}

/** The sets of a rung and side in these check-ins. */
export function setsOn(checkIns: readonly HistoryCheckIn[], rungId: string, side: Side): HistorySet[] {
  return checkIns.flatMap((checkIn) =>
    checkIn.sets.filter((set) => set.rungId === rungId && set.side === side),
  );
}

/** The largest value of these sets; undefined: none was done. */
export function bestOf(sets: readonly HistorySet[]): number | undefined {
  const values = sets.flatMap((set) => (set.value === null ? [] : [set.value]));
  return values.length === 0 ? undefined : Math.max(...values);
}
