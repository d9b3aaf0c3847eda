import type { Actor } from '#lib/auth/actor.ts';
import { findBoardHead, findLastNight, listBoardClients, listBoardReasons } from '#lib/db/board.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { toBoard } from '#lib/views/board.ts';
import type { BoardFilter, BoardView } from '#lib/views/board-types.ts';

export type BoardRead = { board: BoardView; today: string; zone: string };

/** The whole board in order, nothing drawn yet: four queries, whatever the size of the team. */
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
  const coach = filter.coach === 'mine' ? (actor.memberId ?? undefined) : filter.coach;
  const board = toBoard({ today, clients, reasons, coaches, night, filter: { ...filter, coach } });
  return { board, today, zone };
}
