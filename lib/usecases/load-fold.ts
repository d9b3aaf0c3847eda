import type { Actor } from '#lib/auth/actor.ts';
import { listContacts } from '#lib/db/board.ts';
import { withTeamPg } from '#lib/db/client.ts';
import type { FoldName } from '#lib/schemas/board-reads.ts';
import { checkedIn } from '#lib/views/board-draw.ts';
import type { BoardFilter, Waiting } from '#lib/views/board-types.ts';
import { readBoard } from './read-board.ts';

/** Everybody in one fold of the board; those with nothing new say when they last checked in. */
export async function loadFold(
  actor: Actor,
  { filter, fold }: { filter: BoardFilter; fold: FoldName },
  now: Date,
): Promise<{ list: Waiting[] }> {
  const { board, today, zone } = await readBoard(actor, filter, now, ['none', noRow]);
  const list = board[fold];
  if (fold !== 'nothingNew') return { list };
  const ids = list.map((one) => one.clientId);
  const contacts = await withTeamPg(actor.scope, (tx) => listContacts(tx, ids, zone));
  return {
    list: list.map((one) => ({
      ...one,
      words: checkedIn(contacts.get(one.clientId)?.lastCheckIn ?? null, today).said,
    })),
  };
}

function noRow() {
  return { from: 0, to: 0 };
}
