import type { Actor } from '#lib/auth/actor.ts';
import {
  findBoardHead,
  findLastNight,
  listBoardClients,
  listBoardReasons,
  listBoardSkills,
  listClientsOfSkill,
} from '#lib/db/board.ts';
import { type TeamPg, type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { type CoverRow, listCoversOn } from '#lib/db/covers.ts';
import { listUnfinishedAtSix } from '#lib/db/operation.ts';
import { sharedRead } from '#lib/db/shared-read.ts';
import { type Cut, toBoard } from '#lib/views/board.ts';
import type { BoardFilter, BoardNight, BoardView } from '#lib/views/board-types.ts';

/** How many nights back the head of the board looks; the page about nights looks further. */
const LAST_NIGHTS = 2;

/** A cut that has a name gives the same rows of the same board each time. */
type NamedCut = readonly [name: string | undefined, cut: Cut];
export type BoardRead = { board: BoardView; covers: CoverRow[]; today: string; zone: string };

/**
 * The whole board in order, the rows of the cut in words, nothing drawn yet: a fixed number of queries for any size of
 * team. Not inside a transaction: whoever waits for a shared reading must not hold the connection that it needs.
 */
export async function readBoard(
  actor: Actor,
  filter: BoardFilter,
  now: Date,
  [cutName, cut]: NamedCut,
): Promise<BoardRead> {
  const { head, covers, ofSkill } = await withTeamPg(actor.scope, async (tx) => {
    const head = await findBoardHead(tx, actor.memberId, now);
    return {
      head,
      covers: actor.memberId ? await listCoversOn(tx, actor.memberId, head.today) : [],
      ofSkill: filter.skill === undefined ? null : await listClientsOfSkill(tx, filter.skill),
    };
  });
  const { today, zone, coaches } = head;
  const { night, clients, reasons, skills, boards } = await teamOnce(
    `${actor.scope.teamId} ${zone} ${today}`,
    () => readTeam(actor.scope, { zone, today, now }),
  );
  const mine = filter.coach === 'mine';
  const coach = mine ? (actor.memberId ?? undefined) : filter.coach;
  const covered = covers.flatMap((cover) =>
    mine && cover.coveredById === actor.memberId ? [cover.memberId] : [],
  );
  const people = { clients, coaches, covered, skills, ofSkill };
  const input = { today, ...people, reasons, night, filter: { ...filter, coach } };
  // The same reading, looked at in the same way, is put in order once.
  const key = JSON.stringify([input.filter, covered, cutName]);
  const board = (cutName !== undefined && boards.get(key)) || toBoard(input, cut);
  if (cutName !== undefined) boards.set(key, board);
  return { board, covers, today, zone };
}

/** What is the same for every coach of a team in one zone, read once for all who open their mornings at that moment. */
const teamOnce = sharedRead<Awaited<ReturnType<typeof readTeam>>>();

/** Asked only where something is left to do: on most mornings nothing is. */
async function unfinishedAtSix(tx: TeamPg, night: BoardNight, now: Date): Promise<number> {
  if (night.endedAt !== null && night.done >= night.due && !night.late) return 0;
  const nights = await listUnfinishedAtSix(tx, now, LAST_NIGHTS);
  return Math.max(0, ...nights.map(({ clients }) => clients));
}

/** In a transaction of its own: those who share it may each be in one. */
function readTeam(scope: TeamScope, { zone, today, now }: { zone: string; today: string; now: Date }) {
  return withTeamPg(scope, async (tx) => {
    const night = await findLastNight(tx, zone, now);
    return {
      night: night && { ...night, unfinishedAtSix: await unfinishedAtSix(tx, night, now) },
      clients: await listBoardClients(tx, { zone, night: night?.localDate ?? null, today, now }),
      reasons: await listBoardReasons(tx, zone),
      skills: await listBoardSkills(tx),
      boards: new Map<string, BoardView>(),
    };
  });
}
