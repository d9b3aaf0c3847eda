import { pool, type TeamPg, type TeamScope, teamScope } from './client.ts';

/** What goes through the queue; mail and push wait for their own senders. */
const QUEUED_KIND = 'after-check-in';

export type WaitingCheckIn = { id: string; clientId: string; checkInId: string };

export async function listTeamsWithOutbox(
  kind: 'after-check-in' | 'check-clip' | 'push' | 'mail',
): Promise<TeamScope[]> {
  const { rows } = await pool().query<{ teamId: string }>(
    'select team_id as "teamId" from teams_with_outbox($1)',
    [kind],
  );
  return rows.map((row) => teamScope(row.teamId));
}

/**
 * Oldest first: what was never handed to the queue, and what was 1, 3, 7, 15 … minutes ago and whose job has not come to
 * its end, as after a queue lost what it held. Rows that another worker is delivering are left to it.
 */
export async function listWaitingCheckIns(tx: TeamPg, limit: number): Promise<WaitingCheckIn[]> {
  const { rows } = await tx.client.query<WaitingCheckIn>(
    `select id, client_id as "clientId", coalesce(body->>'checkInId', dedupe_key) as "checkInId" from outbox
     where team_id = $1 and kind = $2 and sent_at is null and client_id is not null
       and (attempts = 0 or created_at + interval '1 minute' * (power(2, least(attempts, 12)) - 1) <= now())
     order by created_at, id limit $3 for update skip locked`,
    [tx.teamId, QUEUED_KIND, limit],
  );
  return rows;
}

/** The check-ins of a client that the checks have not looked at. */
export async function listUnchecked(tx: TeamPg, clientId: string): Promise<string[]> {
  const { rows } = await tx.client.query<{ id: string }>(
    'select id from outbox where team_id = $1 and kind = $2 and client_id = $3 and sent_at is null order by id',
    [tx.teamId, QUEUED_KIND, clientId],
  );
  return rows.map((row) => row.id);
}

/** The queue has them. They are done when their job says so, in the transaction of the checks. */
export async function markHanded(tx: TeamPg, ids: string[]): Promise<void> {
  await tx.client.query(
    `update outbox set attempts = attempts + 1, last_error = null where team_id = $1 and id = any($2::uuid[])`,
    [tx.teamId, ids],
  );
}

/** The job of these went wrong; when and how often it is tried again stays as it is. */
export async function noteFailure(tx: TeamPg, ids: string[], error: string): Promise<void> {
  await tx.client.query(
    `update outbox set last_error = $3 where team_id = $1 and id = any($2::uuid[]) and sent_at is null`,
    [tx.teamId, ids, error],
  );
}

/** Somebody asks for what waits, of one kind, to be tried at once. Returns how much there is. */
export async function forgetTries(tx: TeamPg, kind: string): Promise<number> {
  const { rowCount } = await tx.client.query(
    'update outbox set attempts = 0 where team_id = $1 and kind = $2 and sent_at is null',
    [tx.teamId, kind],
  );
  return rowCount ?? 0;
}

export async function markSent(tx: TeamPg, ids: string[], at: Date): Promise<void> {
  await tx.client.query(
    `update outbox set sent_at = $3, attempts = attempts + 1, last_error = null
     where team_id = $1 and id = any($2::uuid[])`,
    [tx.teamId, ids, at],
  );
}

export async function markNotSent(tx: TeamPg, ids: string[], error: string): Promise<void> {
  await tx.client.query(
    `update outbox set attempts = attempts + 1, last_error = $3 where team_id = $1 and id = any($2::uuid[])`,
    [tx.teamId, ids, error],
  );
}

/** Ends what reaches nobody any more. */
export async function closeUnsent(tx: TeamPg, ids: string[], why: string, at: Date): Promise<void> {
  await tx.client.query(
    'update outbox set sent_at = $4, last_error = $3 where team_id = $1 and id = any($2::uuid[])',
    [tx.teamId, ids, why, at],
  );
}
