import type { Actor } from '#lib/auth/actor.ts';
import type { Changed } from '#lib/views/board-news-words.ts';
import { printOf } from '#lib/views/board-print.ts';
import type { BoardFilter } from '#lib/views/board-types.ts';
import { readBoard } from './read-board.ts';

/** A stamp of the board as it is now; with all its rows in short where the asker's stamp is another one. */
export async function loadBoardChanges(
  actor: Actor,
  { filter, stamp }: { filter: BoardFilter; stamp: string },
  now: Date,
): Promise<{ stamp: string; rows?: Changed[] }> {
  const { board } = await readBoard(actor, filter, now, ['none', noRow]);
  const current = printOf(board.prints);
  if (current === stamp) return { stamp };
  return {
    stamp: current,
    rows: board.order.map(({ clientId, name, tier, print }) => ({ clientId, name, tier, print })),
  };
}

/** Nothing is put into words: the prints say what changed. */
function noRow() {
  return { from: 0, to: 0 };
}
