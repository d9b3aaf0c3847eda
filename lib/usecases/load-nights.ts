import type { Actor } from '#lib/auth/actor.ts';
import { findBoardHead } from '#lib/db/board.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { listOwedNightsOf, NIGHTS_BACK } from '#lib/db/ledger.ts';
import { listLeftOutSpans } from '#lib/db/left-out-nights.ts';
import { countNewRows, listFailedNights, listNightClients, listNightRuns } from '#lib/db/night-runs.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { isGivenUp, type NightLine, nightLines } from '#lib/views/nights.ts';
import { saidDate } from '#lib/views/say-date.ts';
import { loadStuck, type StuckView } from './load-stuck.ts';

const RUNS_A_PAGE = 30;

export type NightsView = StuckView & {
  lines: NightLine[];
  owed: { clients: number; nights: number; oldest: string };
  /** Nights on this page that failed and are not tried again by themselves. */
  givenUp: number;
  /** Mornings on this page with more new rows than a coach can answer. */
  overMornings: number;
  clients: { id: string; name: string }[];
  /** Where the next page begins; null: these are the oldest. */
  older: string | null;
};

/** What the page about nights shows: each run, what failed and why, what was left out, what is owed or stuck now. */
export async function loadNights(actor: Actor, before: string | null, now: Date): Promise<NightsView> {
  const owed = await listOwedNightsOf(actor.scope, null, now);
  return withTeamPg(actor.scope, async (tx) => {
    const { today, zone } = await findBoardHead(tx, actor.memberId, now);
    const found = await listNightRuns(tx, { before, limit: RUNS_A_PAGE + 1, now });
    const runs = found.slice(0, RUNS_A_PAGE);
    const [from, to] = [runs.at(-1)?.localDate ?? today, runs[0]?.localDate ?? today];
    const failed = await listFailedNights(tx, from, to);
    const newRows = await countNewRows(tx, from, to);
    const caughtUpFrom = addDays(localDateOf(now, 'UTC'), -NIGHTS_BACK);
    const isLast = found.length <= RUNS_A_PAGE;
    const leftOut = await listLeftOutSpans(tx, { from: isLast ? null : from, before });
    const lines = nightLines({ runs, failed, newRows, leftOut, today, zone, caughtUpFrom });
    const oldest = owed.map((night) => night.localDate).sort()[0];
    return {
      lines,
      owed: {
        clients: new Set(owed.map((night) => night.clientId)).size,
        nights: owed.length,
        oldest: oldest === undefined ? '' : saidDate(oldest, today),
      },
      givenUp: failed.filter(isGivenUp).length,
      overMornings: lines.filter((line) => line.kind === 'run' && line.newRows.over).length,
      ...(await loadStuck(tx, { today, zone, now })),
      clients: await listNightClients(tx),
      older: isLast ? null : from,
    };
  });
}
