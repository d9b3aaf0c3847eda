import type { TeamPg } from './client.ts';

export type NightRunRow = {
  localDate: string;
  startedAt: Date;
  finishedAt: Date | null;
  clientsDue: number;
  clientsDone: number;
  clientsFailed: number;
  /** Of those due: where they live it is not 03:00 yet. */
  clientsLater: number;
  rulesVersion: string;
  /** The lowest and highest version of the settings that its clients were checked by; null before anybody was. */
  settingsFrom: number | null;
  settingsTo: number | null;
};

/** The last runs of the team before a date (null: all), newest first. */
export async function listNightRuns(
  tx: TeamPg,
  page: { before: string | null; limit: number; now: Date },
): Promise<NightRunRow[]> {
  const { rows } = await tx.client.query<NightRunRow>(
    `select r.local_date as "localDate", r.started_at as "startedAt", r.finished_at as "finishedAt",
       r.clients_due as "clientsDue", r.clients_done as "clientsDone", r.clients_failed as "clientsFailed",
       case when r.finished_at is null then nights_to_come($1, r.local_date, $4) else 0 end as "clientsLater",
       r.rules_version as "rulesVersion", s.least as "settingsFrom", s.most as "settingsTo"
     from night_run r
     left join lateral (
       select min(settings_version) as least, max(settings_version) as most from night_client n
       where n.team_id = r.team_id and n.local_date = r.local_date and n.done_at is not null
     ) s on true
     where r.team_id = $1 and ($2::date is null or r.local_date < $2::date)
     order by r.local_date desc limit $3`,
    [tx.teamId, page.before, page.limit, page.now],
  );
  return rows;
}

export type FailedClientRow = {
  localDate: string;
  clientId: string;
  name: string;
  attempts: number;
  failure: string;
};

/** Nights that failed and are not done yet, of these dates. */
export async function listFailedNights(tx: TeamPg, from: string, to: string): Promise<FailedClientRow[]> {
  const { rows } = await tx.client.query<FailedClientRow>(
    `select n.local_date as "localDate", n.client_id as "clientId", c.name, n.attempts, coalesce(n.failure, '') as failure
     from night_client n join client c on c.team_id = n.team_id and c.id = n.client_id
     where n.team_id = $1 and n.done_at is null and n.failed_at is not null and n.local_date between $2::date and $3::date
     order by n.local_date desc, c.name`,
    [tx.teamId, from, to],
  );
  return rows;
}

/**
 * How many clients each night of these dates gave a new row outside now and today. Reasons that stood on the client
 * page only count on the night that put them on the board.
 */
export async function countNewRows(
  tx: TeamPg,
  from: string,
  to: string,
): Promise<{ localDate: string; clients: number }[]> {
  const { rows } = await tx.client.query<{ localDate: string; clients: number }>(
    `select night as "localDate", count(*)::int as clients from (
       select e.night, r.client_id, bool_or(e.body->>'tier' in ('now', 'today')) as soon
       from reason_event e join reason r on r.team_id = e.team_id and r.id = e.reason_id
       where e.team_id = $1 and e.night between $2::date and $3::date and e.what in ('raised', 'counted')
         and e.body->>'tier' is not null and r.state <> 'client-page'
         and not (e.what = 'raised' and exists (select from reason_event c
           where c.team_id = e.team_id and c.reason_id = e.reason_id and c.what = 'counted'))
       group by e.night, r.client_id
     ) each where not soon group by night`,
    [tx.teamId, from, to],
  );
  return rows;
}

export type StuckRow = {
  kind: string;
  count: number;
  oldest: Date;
  attempts: number;
  lastError: string | null;
};

/** What has waited in the outbox since before an instant, by kind. */
export async function listStuck(tx: TeamPg, since: Date): Promise<StuckRow[]> {
  const { rows } = await tx.client.query<StuckRow>(
    `select kind, count(*)::int as count, min(created_at) as oldest, max(attempts)::int as attempts,
       (array_agg(last_error order by attempts desc) filter (where last_error is not null))[1] as "lastError"
     from outbox where team_id = $1 and sent_at is null and created_at < $2 group by kind order by kind`,
    [tx.teamId, since],
  );
  return rows;
}

/** What was ended without being taken since an instant: refused, or given up after days. Nobody is told by it any more. */
export async function listGivenUp(
  tx: TeamPg,
  since: Date,
): Promise<{ kind: string; count: number; why: string }[]> {
  const { rows } = await tx.client.query<{ kind: string; count: number; why: string }>(
    `select kind, count(*)::int as count, last_error as why from outbox
     where team_id = $1 and sent_at >= $2 and last_error is not null
       and (kind = 'mail' or kind = 'push' and starts_with(last_error, 'given up'))
     group by kind, last_error order by kind, last_error`,
    [tx.teamId, since],
  );
  return rows;
}

/** A person asks again: failed nights (of one client, or of all) have their tries back. */
export async function forgetAttempts(tx: TeamPg, clientId: string | null): Promise<void> {
  await tx.client.query(
    `update night_client set attempts = 0
     where team_id = $1 and done_at is null and ($2::uuid is null or client_id = $2::uuid)`,
    [tx.teamId, clientId],
  );
}

/** Clients who have nights, by name. */
export async function listNightClients(tx: TeamPg): Promise<{ id: string; name: string }[]> {
  const { rows } = await tx.client.query<{ id: string; name: string }>(
    'select id, name from client where team_id = $1 and standing = any (night_standings()) order by name, id',
    [tx.teamId],
  );
  return rows;
}

/** True when the client is one of the team's. */
export async function hasClient(tx: TeamPg, clientId: string): Promise<boolean> {
  const { rowCount } = await tx.client.query('select from client where team_id = $1 and id = $2', [
    tx.teamId,
    clientId,
  ]);
  return rowCount === 1;
}
