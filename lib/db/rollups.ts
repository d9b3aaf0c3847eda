import type { HistoryCheckIn } from '#lib/domain/history.ts';
import type { TeamPg } from './client.ts';
import { listHistoryRungs } from './history-rungs.ts';
import { forgetOutcomes } from './outcomes.ts';
import { listEffectiveCheckIns } from './raw-check-ins.ts';
import { rollupOf } from './rollup-of.ts';

/**
 * Computes the day rollups of these local dates again from the effective check-ins. A date without any loses its row:
 * unknown is the absence of a row, never a zero. What was told of steps whose windows read these days is due again.
 */
export async function rebuildRollups(tx: TeamPg, clientId: string, dates: string[]): Promise<void> {
  const wanted = [...new Set(dates)];
  if (wanted.length === 0) return;
  const byDate = new Map<string, HistoryCheckIn[]>();
  for (const checkIn of (await listEffectiveCheckIns(tx, [clientId], wanted)).get(clientId) ?? []) {
    const there = byDate.get(checkIn.date);
    if (there) there.push(checkIn);
    else byDate.set(checkIn.date, [checkIn]);
  }
  const rungIds = [...byDate.values()].flat().flatMap((checkIn) => checkIn.sets.map((set) => set.rungId));
  const rungs = new Map((await listHistoryRungs(tx, [...new Set(rungIds)])).map((rung) => [rung.id, rung]));
  const mass = await bodyMassOf(tx, clientId);
  const rows = [...byDate].map(([date, checkIns]) => rollupOf(date, checkIns, rungs, mass));
  await tx.client.query(
    'delete from day_rollup where team_id = $1 and client_id = $2 and date = any($3::date[])',
    [tx.teamId, clientId, wanted],
  );
  await tx.client.query(
    `insert into day_rollup (team_id, client_id, date, state, session_load_au, tissue_loads, worst_pain, check_ins, facts)
     select $1, $2, date, state, load, tissues, pain, "count", facts
     from jsonb_to_recordset($3::jsonb) as day(date date, state text, load float8, tissues jsonb, pain int, "count" int, facts text)`,
    [tx.teamId, clientId, JSON.stringify(rows)],
  );
  const [from = '', to = from] = [[...wanted].sort().at(0), [...wanted].sort().at(-1)];
  await forgetOutcomes(tx, clientId, { from, to });
}

async function bodyMassOf(tx: TeamPg, clientId: string): Promise<number | null> {
  const { rows } = await tx.client.query<{ mass: number | null }>(
    'select body_mass_kg as mass from client where team_id = $1 and id = $2',
    [tx.teamId, clientId],
  );
  return rows[0]?.mass ?? null;
}
