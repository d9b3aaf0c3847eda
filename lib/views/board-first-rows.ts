import type { Tier } from '#lib/domain/vocabulary.ts';
import type { Cut } from './board.ts';

/**
 * The first rows of each group where the board has more than `whole` of them. One or two over a group's number are not
 * worth a press: they come too.
 */
export function firstRows(most: Record<Tier, number>, whole: number): Cut {
  return (tier, rows, total) => ({
    from: 0,
    to: total > whole && rows.length > most[tier] + 2 ? most[tier] : rows.length,
  });
}

/** The next rows of one group behind that of a client; from the start where that one has left the group. */
export function rowsAfter(of: Tier, clientId: string | undefined, most: number): Cut {
  return (tier, rows) => {
    if (tier !== of) return { from: 0, to: 0 };
    const from = rows.findIndex((row) => row.clientId === clientId) + 1;
    return { from, to: Math.min(rows.length, from + most) };
  };
}
