import type { TeamPg } from './client.ts';

export type NightRunRow = {
  localDate: string;
  startedAt: Date;
  finishedAt: Date | null;
  clientsDue: number;
  clientsDone: number;
  clientsFailed: number;
};

/** The last runs of the team, newest first. */
export async function listNightRuns(tx: TeamPg, limit: number): Promise<NightRunRow[]> {
  const { rows } = await tx.client.query<NightRunRow>(
    `select local_date as "localDate", started_at as "startedAt", finished_at as "finishedAt",
       clients_due as "clientsDue", clients_done as "clientsDone", clients_failed as "clientsFailed"
     from night_run where team_id = $1 order by local_date desc limit $2`,
    [tx.teamId, limit],
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

/** Nights that failed and are not done yet. */
export async function listFailedNights(tx: TeamPg, from: string): Promise<FailedClientRow[]> {
  const { rows } = await tx.client.query<FailedClientRow>(
    `select n.local_date as "localDate", n.client_id as "clientId", c.name, n.attempts, coalesce(n.failure, '') as failure
     from night_client n join client c on c.team_id = n.team_id and c.id = n.client_id
     where n.team_id = $1 and n.done_at is null and n.failed_at is not null and n.local_date >= $2::date
     order by n.local_date desc, c.name`,
    [tx.teamId, from],
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

/** True when the client is one of the team's. */
export async function hasClient(tx: TeamPg, clientId: string): Promise<boolean> {
  const { rowCount } = await tx.client.query('select from client where team_id = $1 and id = $2', [
    tx.teamId,
    clientId,
  ]);
  return rowCount === 1;
}
