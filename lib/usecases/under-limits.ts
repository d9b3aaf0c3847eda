import type { TeamPg } from '#lib/db/client.ts';
import { listHistoryRungs } from '#lib/db/history-rungs.ts';
import { listLimits } from '#lib/db/limits.ts';
import { listSwapRungs, listSwaps } from '#lib/db/swaps.ts';
import { isInForce } from '#lib/planning/limit-on-item.ts';
import { headUpSwaps } from '#lib/planning/swaps.ts';
import type { UnderLimits } from '#lib/views/phone-limits.ts';
import type { PhoneSession } from '#lib/views/phone-session.ts';

/** The client's limits in force, and what it takes to go by them in these sessions. Without limits nothing more is read. */
export async function underLimits(
  tx: TeamPg,
  about: { clientId: string; date: string; sessions: PhoneSession[] },
): Promise<UnderLimits> {
  const { clientId, date, sessions } = about;
  const limits = (await listLimits(tx, clientId)).filter((limit) => isInForce(limit, date));
  if (limits.length === 0) return { date, limits, rungs: new Map(), swaps: [] };
  const planned = sessions.flatMap(({ drills }) => drills.flatMap(({ sides }) => sides));
  const rungIds = [...new Set(planned.map(({ rungId }) => rungId))];
  const isHeld = limits.some(({ rule }) => rule === 'no-upside-down');
  const swaps = [...(isHeld ? await listHeadUp(tx, rungIds) : []), ...(await listSwaps(tx, rungIds))];
  const rungs = await listHistoryRungs(tx, [
    ...new Set([...rungIds, ...swaps.map(({ insteadId }) => insteadId)]),
  ]);
  return { date, limits, swaps, rungs: new Map(rungs.map((rung) => [rung.id, rung])) };
}

/** What the planned upside-down rungs are swapped for while that is held. */
async function listHeadUp(tx: TeamPg, rungIds: readonly string[]): Promise<UnderLimits['swaps'][number][]> {
  const rungs = await listSwapRungs(tx);
  return rungs
    .filter((rung) => rung.upsideDown && rungIds.includes(rung.id))
    .flatMap((rung) =>
      headUpSwaps(rung, rungs).map((insteadId) => ({ rungId: rung.id, insteadId, support: null })),
    );
}
