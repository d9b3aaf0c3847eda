import type { Actor } from '#lib/auth/actor.ts';
import { findBoardHead, findLastNight, listBoardClients, listBoardReasons } from '#lib/db/board.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { type CoverRow, listCoversOn } from '#lib/db/covers.ts';
import { toBoard } from '#lib/views/board.ts';
import type { BoardFilter, BoardView } from '#lib/views/board-types.ts';

export type BoardRead = { board: BoardView; covers: CoverRow[]; today: string; zone: string };

/** The whole board in order, nothing drawn yet: five queries, whatever the size of the team. */
export async function readBoard(
  tx: TeamPg,
  actor: Actor,
  filter: BoardFilter,
  now: Date,
): Promise<BoardRead> {
  const { today, zone, coaches } = await findBoardHead(tx, actor.memberId, now);
  const night = await findLastNight(tx, zone, now);
  const clients = await listBoardClients(tx, { zone, night: night?.localDate ?? null, today, now });
  const reasons = await listBoardReasons(tx, zone);
  const mine = filter.coach === 'mine';
  const coach = mine ? (actor.memberId ?? undefined) : filter.coach;
  const covers = actor.memberId ? await listCoversOn(tx, actor.memberId, today) : [];
  const covered = covers.flatMap((cover) =>
    mine && cover.coveredById === actor.memberId ? [cover.memberId] : [],
  );
  const board = toBoard({ today, clients, reasons, coaches, covered, night, filter: { ...filter, coach } });
  return { board, covers, today, zone };
}
