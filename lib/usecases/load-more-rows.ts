import type { Actor } from '#lib/auth/actor.ts';
import type { Tier } from '#lib/domain/vocabulary.ts';
import { type ShownRow, toShown } from '#lib/views/board-draw.ts';
import { rowsAfter } from '#lib/views/board-first-rows.ts';
import type { BoardFilter } from '#lib/views/board-types.ts';
import { drawRows } from './draw-rows.ts';
import { readBoard } from './read-board.ts';

const ROWS_A_TURN = 60;

type More = { filter: BoardFilter; of: Tier; after: string | undefined };

/** The next rows of a group behind a client's, drawn, and how many follow them still. */
export async function loadMoreRows(
  actor: Actor,
  { filter, of, after }: More,
  now: Date,
): Promise<{ rows: ShownRow[]; more: number }> {
  const read = await readBoard(actor, filter, now, [undefined, rowsAfter(of, after, ROWS_A_TURN)]);
  const group = read.board.groups.find((one) => one.tier === of);
  const drawn = await drawRows(actor.scope, read, group?.rows ?? []);
  return { rows: [...drawn.values()].map(toShown), more: group?.more ?? 0 };
}
