import type { HistorySet } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';

/** A set with a result; `not-done` and empty ones have none. */
export function hasResult(set: HistorySet): set is HistorySet & { value: number } {
  return set.value !== null && set.how !== 'not-done';
}

/** Whether a set speaks about a side: its own, or both. */
export function isOfSide(set: { side: Side }, side: Side): boolean {
  return side === 'both' || set.side === 'both' || set.side === side;
}
