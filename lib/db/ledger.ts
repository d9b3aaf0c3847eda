import { pool, type TeamPg, type TeamScope, teamScope } from './client.ts';

export type OwedNight = { teamId: string; clientId: string; localDate: string };

/** At most this many nights back are run; older ones are said on the Nights page. */
export const NIGHTS_BACK = 14;

/** Every owed night of every team, oldest first: the only place where the worker looks across teams. */
export async function listOwedNights(now: Date): Promise<OwedNight[]> {
  const { rows } = await pool().query<OwedNight>(
    `select team_id as "teamId", client_id as "clientId", local_date as "localDate" from owed_nights($1, $2)`,
    [now, NIGHTS_BACK],
  );
  return rows;
}

/** Owed nights of one team, of all its clients or of some. */
export async function listOwedNightsOf(
  scope: TeamScope,
  clientIds: string[] | null,
  now: Date,
): Promise<OwedNight[]> {
  const { rows } = await pool().query<OwedNight>(
    `select team_id as "teamId", client_id as "clientId", local_date as "localDate"
     from owed_nights_of($1, $2, $3, $4)`,
    [now, NIGHTS_BACK, scope.teamId, clientIds],
  );
  return rows;
}

/** The scope of a team that the ledger named. */
export function ledgerScope(teamId: string): TeamScope {
  return teamScope(teamId);
}

/** One night of a client at a time, whoever else is at work. Sorted, so that two batches cannot wait for each other. */
export async function lockClients(tx: TeamPg, clientIds: string[]): Promise<void> {
  await tx.client.query(
    `select pg_advisory_xact_lock(hashtextextended($1 || id, 7)) from unnest($2::text[]) as each(id)`,
    [tx.teamId, [...clientIds].sort()],
  );
}

/** Nights behind a client are counted up to this many: what is asked is whether it is one of the first. */
const NIGHTS_COUNTED = 31;
/** `nightsDone`: see NIGHTS_COUNTED. */
export type DueClient = { clientId: string; dueAt: Date; nightsDone: number };

/** Those of the clients whose night is not finished yet, with the instant it was due and how many nights they have behind them. */
export async function listDueClients(
  tx: TeamPg,
  clientIds: string[],
  localDate: string,
): Promise<DueClient[]> {
  const { rows } = await tx.client.query<DueClient>(
    `select c.id as "clientId", night_due_at(c.zone, $3::date) as "dueAt",
       (select count(*)::int from (select from night_client n where n.team_id = $1 and n.client_id = c.id
          and n.done_at is not null and n.local_date < $3::date limit ${NIGHTS_COUNTED}) counted) as "nightsDone"
     from client c
     where c.team_id = $1 and c.id = any($2::uuid[]) and c.standing = any (night_standings())
       and not exists (select from night_client n
         where n.team_id = $1 and n.client_id = c.id and n.local_date = $3::date and n.done_at is not null)
     order by c.id`,
    [tx.teamId, clientIds, localDate],
  );
  return rows;
}

export type FinishedNight = { clientId: string; findings: unknown[]; settingsVersion: number };

/** Writes the ledger. A night that is finished already stays as it is. */
export async function insertFinishedNights(
  tx: TeamPg,
  night: { localDate: string; doneAt: Date; rulesVersion: string },
  finished: FinishedNight[],
): Promise<void> {
  if (finished.length === 0) return;
  await tx.client.query(
    `insert into night_client (team_id, client_id, local_date, done_at, findings, rules_version, attempts, settings_version)
     select $1, each.id, $3::date, $4, each.findings::jsonb, $5, 1, each.settings
     from unnest($2::uuid[], $6::text[], $7::int[]) as each(id, findings, settings)
     on conflict (team_id, client_id, local_date) do update
       set done_at = excluded.done_at, findings = excluded.findings, rules_version = excluded.rules_version,
           settings_version = excluded.settings_version,
           failed_at = null, failure = null, attempts = night_client.attempts + 1
       where night_client.done_at is null`,
    [
      tx.teamId,
      finished.map((each) => each.clientId),
      night.localDate,
      night.doneAt,
      night.rulesVersion,
      finished.map((each) => JSON.stringify(each.findings)),
      finished.map((each) => each.settingsVersion),
    ],
  );
}

export type FailedNight = { clientId: string; failure: string };

export async function insertFailedNights(
  tx: TeamPg,
  night: { localDate: string; failedAt: Date; rulesVersion: string },
  failed: FailedNight[],
): Promise<void> {
  if (failed.length === 0) return;
  await tx.client.query(
    `insert into night_client (team_id, client_id, local_date, failed_at, failure, rules_version, attempts)
     select $1, each.id, $3::date, $4, each.failure, $5, 1
     from unnest($2::uuid[], $6::text[]) as each(id, failure)
     on conflict (team_id, client_id, local_date) do update
       set failed_at = excluded.failed_at, failure = excluded.failure, attempts = night_client.attempts + 1
       where night_client.done_at is null`,
    [
      tx.teamId,
      failed.map((each) => each.clientId),
      night.localDate,
      night.failedAt,
      night.rulesVersion,
      failed.map((each) => each.failure),
    ],
  );
}

/** The run of a team and date: made by the first batch, its counters recounted from the ledger by every batch. */
export async function countNightRun(
  tx: TeamPg,
  night: { localDate: string; startedAt: Date; at: Date; rulesVersion: string },
): Promise<void> {
  // A statement of its own: the count below must see what the batch before this one committed.
  await tx.client.query('select pg_advisory_xact_lock(hashtextextended($1, 11))', [
    `${tx.teamId}${night.localDate}`,
  ]);
  await tx.client.query(
    `with due as (
       select count(*)::int as clients from client c
       where c.team_id = $1
         and (coalesce(c.joined_at, c.invited_at) < $2::date - interval '2 days' -- long ago: wherever that is
           or wall_clock(c.zone, coalesce(c.joined_at, c.invited_at))::date <= $2::date)
         and (c.standing = any (night_standings()) and c.id not in (select consent_taken_back($1))
           or exists (select from night_client n where n.team_id = $1 and n.client_id = c.id and n.local_date = $2::date))
     ), ledger as (
       select count(done_at)::int as done, count(*) filter (where done_at is null)::int as failed
       from night_client where team_id = $1 and local_date = $2::date
     )
     insert into night_run as run
       (team_id, local_date, started_at, finished_at, clients_due, clients_done, clients_failed, rules_version)
     select $1, $2::date, $3, case when done + failed >= clients then $4::timestamptz end,
       greatest(clients, done + failed), done, failed, $5 from due, ledger
     on conflict (team_id, local_date) do update
       set clients_due = excluded.clients_due, clients_done = excluded.clients_done,
           clients_failed = excluded.clients_failed, rules_version = excluded.rules_version,
           finished_at = coalesce(run.finished_at, excluded.finished_at)`,
    [tx.teamId, night.localDate, night.startedAt, night.at, night.rulesVersion],
  );
}

/** How many nights of a client are finished: its first three write to the client page only. */
export async function countFinishedNights(tx: TeamPg, clientId: string): Promise<number> {
  const { rows } = await tx.client.query<{ nights: number }>(
    `select count(*)::int as nights from night_client where team_id = $1 and client_id = $2 and done_at is not null`,
    [tx.teamId, clientId],
  );
  return rows[0]?.nights ?? 0;
}
