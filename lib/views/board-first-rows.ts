import type { Tier } from '#lib/domain/vocabulary.ts';
import type { BoardGroup, BoardRow } from './board-types.ts';

/** A group of which not every row is there: how many more follow, and how many clients it has in all. */
export type CutGroup = BoardGroup & { more: number; count: number };

/** The first rows of each group. One or two over the number are not worth a press: they come too. */
export function firstRows(groups: readonly BoardGroup[], most: Record<Tier, number>): CutGroup[] {
  return groups.map((group) => {
    const cut = group.rows.length > most[group.tier] + 2 ? most[group.tier] : group.rows.length;
    return {
      ...group,
      rows: group.rows.slice(0, cut),
      more: group.rows.length - cut,
      count: group.rows.length,
    };
  });
}

/** The rows of a group behind the one of a client; from the start where that one has left the group. */
export function rowsAfter(rows: readonly BoardRow[], clientId: string): BoardRow[] {
  return rows.slice(rows.findIndex((row) => row.clientId === clientId) + 1);
}
