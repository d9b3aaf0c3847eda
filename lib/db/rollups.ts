import type { HistoryCheckIn } from '#lib/domain/history.ts';
import type { TeamPg } from './client.ts';
import { forgetOutcomes } from './outcomes.ts';
import { listEffectiveCheckIns } from './raw-check-ins.ts';
import { type Rollup, rollupOf } from './rollup-of.ts';

/**
 * Computes the day rollups of these local dates again from the effective check-ins. A date without any loses its row:
 * unknown is the absence of a row, never a zero. What was told of steps whose windows read these days is due again.
 */
export async function rebuildRollups(tx: TeamPg, clientId: string, dates: string[]): Promise<void> {
  const wanted = [...new Set(dates)].sort();
  const [from, to] = [wanted.at(0), wanted.at(-1)];
  if (from === undefined || to === undefined) return;
  const rollups = (await computeRollups(tx, [clientId], wanted)).get(clientId) ?? [];
  const kept = new Set(rollups.map(({ date }) => date));
  const gone = wanted.filter((date) => !kept.has(date)).map((date) => ({ clientId, date }));
  const rows = rollups.map((rollup) => ({ clientId, ...rollup }));
  await Promise.all([
    deleteRollups(tx, gone),
    writeRollups(tx, rows),
    forgetOutcomes(tx, clientId, { from, to }),
  ]);
}

/** What the rollups of clients have to be by their effective check-ins, oldest first; `dates: null`: all days. */
export async function computeRollups(
  tx: TeamPg,
  clientIds: string[],
  dates: string[] | null,
): Promise<Map<string, Rollup[]>> {
  const checkIns = await listEffectiveCheckIns(tx, clientIds, dates);
  return new Map([...checkIns].map(([clientId, all]) => [clientId, rollUp(all)]));
}

/** `checkIns` in order: those of one date are together. */
function rollUp(checkIns: readonly HistoryCheckIn[]): Rollup[] {
  const byDate = new Map<string, HistoryCheckIn[]>();
  for (const checkIn of checkIns) {
    const there = byDate.get(checkIn.date);
    if (there) there.push(checkIn);
    else byDate.set(checkIn.date, [checkIn]);
  }
  return [...byDate].map(([date, those]) => rollupOf(date, those));
}

export type KeptRollup = Rollup & { clientId: string };

/** The rollups of clients as they are kept. */
export async function listRollups(tx: TeamPg, clientIds: string[]): Promise<KeptRollup[]> {
  const { rows } = await tx.client.query<KeptRollup>(
    `select client_id as "clientId", date, state, session_load_au as load, worst_pain as pain, check_ins as count, facts
     from day_rollup where team_id = $1 and client_id = any($2::uuid[]) order by client_id, date`,
    [tx.teamId, clientIds],
  );
  return rows;
}

export async function writeRollups(tx: TeamPg, rollups: readonly KeptRollup[]): Promise<void> {
  if (rollups.length === 0) return;
  await tx.client.query(
    `insert into day_rollup (team_id, client_id, date, state, session_load_au, worst_pain, check_ins, facts)
     select $1, "clientId", date, state, load, pain, "count", facts
     from jsonb_to_recordset($2::jsonb)
       as day("clientId" uuid, date date, state text, load float8, pain int, "count" int, facts text)
     on conflict (team_id, client_id, date) do update set state = excluded.state,
       session_load_au = excluded.session_load_au, worst_pain = excluded.worst_pain, check_ins = excluded.check_ins,
       facts = excluded.facts`,
    [tx.teamId, JSON.stringify(rollups)],
  );
}

export async function deleteRollups(
  tx: TeamPg,
  days: readonly { clientId: string; date: string }[],
): Promise<void> {
  if (days.length === 0) return;
  await tx.client.query(
    `delete from day_rollup r using unnest($2::uuid[], $3::date[]) as day(client_id, date)
     where r.team_id = $1 and r.client_id = day.client_id and r.date = day.date`,
    [tx.teamId, days.map((day) => day.clientId), days.map((day) => day.date)],
  );
}

/**
 * Writes the weeks of these clients again where they do not say what their days say. The database keeps them itself:
 * returns the weeks that were wrong all the same.
 */
export async function mendWeeks(
  tx: TeamPg,
  clientIds: string[],
): Promise<{ clientId: string; date: string }[]> {
  const { rows } = await tx.client.query<{ clientId: string; date: string }>(
    `with told as (
       select client_id, week_of(date) as week, string_agg(packed_day(date, facts), ',' order by date) as days
       from day_rollup where team_id = $1 and client_id = any($2::uuid[]) group by 1, 2
     ), gone as (
       delete from week_rollup w where w.team_id = $1 and w.client_id = any($2::uuid[])
         and not exists (select from told t where t.client_id = w.client_id and t.week = w.week)
       returning w.client_id, w.week
     ), mended as (
       insert into week_rollup as w (team_id, client_id, week, days) select $1, client_id, week, days from told
       on conflict (team_id, client_id, week) do update set days = excluded.days where w.days <> excluded.days
       returning w.client_id, w.week
     )
     select client_id as "clientId", week as date from gone
     union all select client_id, week from mended order by 1, 2`,
    [tx.teamId, clientIds],
  );
  return rows;
}
