import type { HistoryPlacement, HistoryRung } from '#lib/domain/history.ts';

/**
 * Where a client stands on a date: the newest placement of each ladder and side not after it, in a fixed order.
 * Of two on one day the higher rung counts.
 */
export function standingOn(
  placements: readonly HistoryPlacement[],
  date: string,
  rungs: ReadonlyMap<string, HistoryRung>,
): HistoryPlacement[] {
  const newest = new Map<string, HistoryPlacement>();
  const position = (one: HistoryPlacement) => rungs.get(one.rungId)?.position ?? -1;
  for (const placement of placements) {
    if (placement.from > date) continue;
    const key = `${placement.ladderId} ${placement.side}`;
    const known = newest.get(key);
    const later =
      !known ||
      placement.from > known.from ||
      (placement.from === known.from && position(placement) > position(known));
    if (later) newest.set(key, placement);
  }
  return [...newest.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, placement]) => placement);
}
