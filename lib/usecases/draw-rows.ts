import { listContacts } from '#lib/db/board.ts';
import { listStrips } from '#lib/db/board-strips.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { drawRow } from '#lib/views/board-draw.ts';
import type { BoardRow, DrawnRow } from '#lib/views/board-types.ts';
import type { BoardRead } from './read-board.ts';

/** Strips and last check-ins of these rows only: what is not shown is not read. */
export async function drawRows(
  tx: TeamPg,
  { board, today, zone }: BoardRead,
  rows: BoardRow[],
): Promise<Map<string, DrawnRow>> {
  const ids = rows.map((row) => row.clientId);
  const contacts = await listContacts(tx, ids, zone);
  const strips = await listStrips(tx, ids, { from: board.stripFrom, to: board.stripTo });
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
