import type { Actor } from '#lib/auth/actor.ts';
import { findBoardHead, findLastNight, listBoardClients, listBoardReasons } from '#lib/db/board.ts';
import { listStrips } from '#lib/db/board-strips.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { toBoard } from '#lib/views/board.ts';
import type { BoardFilter, BoardView } from '#lib/views/board-types.ts';
import { STRIP_DAYS } from '#lib/views/strip.ts';

/** The coach's morning from the open reasons and the roster, in a fixed number of queries. */
export async function loadBoard(actor: Actor, filter: BoardFilter, now: Date): Promise<BoardView> {
  return withTeamPg(actor.scope, async (tx) => {
    const head = await findBoardHead(tx, actor.memberId, now);
    const night = await findLastNight(tx, head.zone);
    const clients = await listBoardClients(tx, head.zone, night?.localDate ?? null);
    const reasons = await listBoardReasons(tx);
    const onBoard = reasons.filter((reason) => reason.state === 'open' && reason.tier !== null);
    const to = night?.localDate ?? addDays(head.today, -1);
    const strips = await listStrips(tx, [...new Set(onBoard.map((reason) => reason.clientId))], {
      from: addDays(to, 1 - STRIP_DAYS),
      to,
    });
    const coach = filter.coach === 'mine' ? (actor.memberId ?? undefined) : filter.coach;
    return toBoard({
      today: head.today,
      clients,
      reasons,
      coaches: head.coaches,
      night,
      strips,
      filter: { ...filter, coach },
    });
  });
}
