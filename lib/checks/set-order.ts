import type { HistoryCheckIn, HistorySet } from '#lib/domain/history.ts';

/**
 * The check-in with its sets in order of rung, side and index; itself when they are so already. Sums of floating numbers
 * depend on their order, so it is the same whatever the order of rows.
 */
export function inOrder(checkIn: HistoryCheckIn): HistoryCheckIn {
  const { sets } = checkIn;
  for (let index = 1; index < sets.length; index += 1) {
    const before = sets[index - 1];
    const here = sets[index];
    if (before && here && bySet(before, here) > 0) return { ...checkIn, sets: [...sets].sort(bySet) };
  }
  return checkIn;
}

function bySet(a: HistorySet, b: HistorySet): number {
  if (a.rungId !== b.rungId) return a.rungId < b.rungId ? -1 : 1;
  if (a.side !== b.side) return a.side < b.side ? -1 : 1;
  return a.index - b.index;
}
