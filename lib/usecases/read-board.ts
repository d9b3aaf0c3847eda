import type { Actor } from '#lib/auth/actor.ts';
import {
  findBoardHead,
  findLastNight,
  listBoardClients,
  listBoardReasons,
  listBoardSkills,
  listClientsOfSkill,
} from '#lib/db/board.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { type CoverRow, listCoversOn } from '#lib/db/covers.ts';
import { type Cut, toBoard } from '#lib/views/board.ts';
import type { BoardFilter, BoardView } from '#lib/views/board-types.ts';

export type BoardRead = { board: BoardView; covers: CoverRow[]; today: string; zone: string };

/** The whole board in order, the rows of the cut in words, nothing drawn yet: six queries for any size of team. */
export async function readBoard(
  tx: TeamPg,
  actor: Actor,
  filter: BoardFilter,
  now: Date,
  cut?: Cut,
): Promise<BoardRead> {
  const { today, zone, coaches } = await findBoardHead(tx, actor.memberId, now);
  const night = await findLastNight(tx, zone, now);
  const clients = await listBoardClients(tx, { zone, night: night?.localDate ?? null, today, now });
  const reasons = await listBoardReasons(tx, zone);
  const skills = await listBoardSkills(tx);
  const ofSkill = filter.skill === undefined ? null : await listClientsOfSkill(tx, filter.skill);
  const mine = filter.coach === 'mine';
  const coach = mine ? (actor.memberId ?? undefined) : filter.coach;
  const covers = actor.memberId ? await listCoversOn(tx, actor.memberId, today) : [];
  const covered = covers.flatMap((cover) =>
    mine && cover.coveredById === actor.memberId ? [cover.memberId] : [],
  );
  const people = { clients, coaches, covered, skills, ofSkill };
  const board = toBoard({ today, ...people, reasons, night, filter: { ...filter, coach } }, cut);
  return { board, covers, today, zone };
}
