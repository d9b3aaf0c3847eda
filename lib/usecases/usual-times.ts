import type { Limits } from '#lib/checks/thresholds.ts';
import { usualTimeHere } from '#lib/checks/usual-time-here.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { listPlacedRungs, listTeamStays } from '#lib/db/team-stays.ts';
import type { UsualDaysHere } from '#lib/domain/history.ts';

/** What the rungs of a team took its clients up to an evening, by rung. */
export type UsualTimes = (
  tx: TeamPg,
  asOf: string,
  limits: Limits,
) => Promise<ReadonlyMap<string, UsualDaysHere>>;

const KEPT_MS = 10 * 60_000;
const MOST = 60;

type Kept = { at: number; times: Promise<ReadonlyMap<string, UsualDaysHere>> };

/**
 * Usual times worked out once for a team and evening and kept for ten minutes: they come from the placements of the
 * whole team, and each batch of its night would read all of those again.
 */
export function rememberUsualTimes(clock: () => number = () => performance.now()): UsualTimes {
  const kept = new Map<string, Kept>();
  return (tx, asOf, limits) => {
    const key = `${tx.teamId} ${asOf} ${limits['forecast.leastDays']}`;
    const there = kept.get(key);
    if (there && clock() - there.at < KEPT_MS) return there.times;
    const times = readUsualTimes(tx, asOf, limits);
    kept.delete(key);
    kept.set(key, { at: clock(), times });
    times.catch(() => kept.delete(key));
    const [oldest] = kept.keys();
    if (kept.size > MOST && oldest !== undefined) kept.delete(oldest);
    return times;
  };
}

async function readUsualTimes(
  tx: TeamPg,
  asOf: string,
  limits: Limits,
): Promise<ReadonlyMap<string, UsualDaysHere>> {
  const stays = await listTeamStays(tx, await listPlacedRungs(tx), asOf);
  return new Map(
    [...stays].flatMap(([rungId, those]) => {
      const usual = usualTimeHere(those, limits);
      return usual ? [[rungId, usual] as const] : [];
    }),
  );
}
