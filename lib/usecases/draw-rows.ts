import { listContacts } from '#lib/db/board.ts';
import { listStrips } from '#lib/db/board-strips.ts';
import { type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { sharedRead } from '#lib/db/shared-read.ts';
import { drawRow } from '#lib/views/board-draw.ts';
import type { BoardRow, DrawnRow } from '#lib/views/board-types.ts';
import type { BoardRead } from './read-board.ts';

/** Strips and last check-ins of these rows only: what is not shown is not read. Not inside a transaction. */
export async function drawRows(
  scope: TeamScope,
  { board, today, zone }: BoardRead,
  rows: BoardRow[],
): Promise<Map<string, DrawnRow>> {
  const ids = rows.map((row) => row.clientId);
  const span = { from: board.stripFrom, to: board.stripTo };
  const { contacts, strips } = await pastOnce(
    [scope.teamId, zone, span.from, span.to, ...ids].join(' '),
    () => readPast(scope, { ids, zone, span }),
  );
  return new Map(
    rows.map((row) => [
      row.clientId,
      drawRow(row, {
        contact: contacts.get(row.clientId),
        days: strips.get(row.clientId),
        today,
        lastNight: board.stripTo,
      }),
    ]),
  );
}

/** The same rows for several coaches at once are read once. */
const pastOnce = sharedRead<Awaited<ReturnType<typeof readPast>>>();

function readPast(
  scope: TeamScope,
  about: { ids: string[]; zone: string; span: { from: string; to: string } },
) {
  return withTeamPg(scope, async (tx) => ({
    contacts: await listContacts(tx, about.ids, about.zone),
    strips: await listStrips(tx, about.ids, about.span),
  }));
}
