import type pg from 'pg';
import { enqueue } from '#lib/jobs/queue.ts';
import { tickJob } from '#lib/jobs/tick.ts';

const WRITTEN = ['reason', 'reason_event'];
const PATIENCE_MS = 900_000;

/** The local date whose night is the newest that is due where all clients of the bench live. */
export async function newestNight(db: pg.Client, zone: string): Promise<string> {
  const { rows } = await db.query<{ date: string }>(
    `select ((wall_clock($1, now()) - interval '3 hours')::date - 1)::text as date`,
    [zone],
  );
  return rows[0]?.date ?? '';
}

/** Before the night of that date: these teams owe it, everybody else has it, and reasons are as the night before left them. */
export async function oweAgain(db: pg.Client, date: string, teamIds: readonly string[]): Promise<void> {
  await db.query('delete from night_client where local_date = $1', [date]);
  await db.query('delete from night_run where local_date = $1', [date]);
  await db.query(
    `insert into night_client (team_id, client_id, local_date, done_at, rules_version, attempts)
     select team_id, id, $1, now(), '1', 1 from client where not team_id = any($2::uuid[])`,
    [date, teamIds],
  );
  await db.query('set session_replication_role = replica');
  for (const table of WRITTEN) {
    if (!(await isKept(db, table))) continue;
    await db.query(`delete from ${table} where team_id = any($1::uuid[])`, [teamIds]);
    await db.query(`insert into ${table} select * from kept.${table} where team_id = any($1::uuid[])`, [
      teamIds,
    ]);
  }
  await db.query('set session_replication_role = origin');
  await db.query('vacuum analyze reason, reason_event, night_client, night_run');
}

/** Keeps the reasons as they are now: each round begins with them. */
export async function keepReasons(db: pg.Client): Promise<void> {
  await db.query('drop schema if exists kept cascade; create schema kept');
  for (const table of WRITTEN)
    await db.query(`create unlogged table kept.${table} as select * from ${table}`);
}

async function isKept(db: pg.Client, table: string): Promise<boolean> {
  const { rows } = await db.query<{ there: boolean }>('select to_regclass($1) is not null as there', [
    `kept.${table}`,
  ]);
  return rows[0]?.there === true;
}

/** Seconds from the tick until the last client of these teams has the night; the workers are up and waiting. */
export async function timeNight(
  db: pg.Client,
  date: string,
  { teamIds, clients }: { teamIds: readonly string[]; clients: number },
): Promise<number> {
  const start = performance.now();
  await enqueue(tickJob, {});
  while (performance.now() - start < PATIENCE_MS) {
    await new Promise((next) => setTimeout(next, 50));
    const { rows } = await db.query<{ done: number; failed: number }>(
      `select coalesce(sum(clients_done), 0)::int as done, coalesce(sum(clients_failed), 0)::int as failed
       from night_run where local_date = $1 and team_id = any($2::uuid[])`,
      [date, teamIds],
    );
    const [row] = rows;
    if (row && row.failed > 0) throw new Error(`the night failed for ${row.failed} clients`);
    if (row && row.done >= clients) return (performance.now() - start) / 1000;
  }
  throw new Error(`the night of ${clients} clients was not over after ${PATIENCE_MS / 1000} s`);
}

/** Seconds that the server needs to hand out the raw set rows of the 84 days before, to nowhere. */
export async function timeCopy(db: pg.Client): Promise<number> {
  const start = performance.now();
  await db.query(`copy kept_window to '/dev/null'`);
  return (performance.now() - start) / 1000;
}

/** The raw set rows of these teams in the 84 days up to a date, in a table of their own. Returns how many they are. */
export async function makeWindow(db: pg.Client, date: string, teamIds: readonly string[]): Promise<number> {
  const made = await db.query(
    `create unlogged table kept_window as select s.* from check_in_set s
     join check_in c on c.team_id = s.team_id and c.id = s.check_in_id
     where c.date > '${date}'::date - 84 and c.date <= '${date}' and c.team_id in (${teamIds.map((id) => `'${id}'`).join()})`,
  );
  await db.query('vacuum analyze kept_window');
  return made.rowCount ?? 0;
}
