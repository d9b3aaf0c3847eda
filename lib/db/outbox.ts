import { pool, type TeamPg, type TeamScope, teamScope } from './client.ts';

/** What goes through the queue; mail and push wait for their own senders. */
const QUEUED_KIND = 'after-check-in';

export type WaitingCheckIn = { id: string; clientId: string; checkInId: string };

export async function listTeamsWithOutbox(kind: 'after-check-in' | 'push' | 'mail'): Promise<TeamScope[]> {
  const { rows } = await pool().query<{ teamId: string }>(
    'select team_id as "teamId" from teams_with_outbox($1)',
    [kind],
  );
  return rows.map((row) => teamScope(row.teamId));
}

/** Oldest first. Rows that another worker is delivering are left to it. */
export async function listWaitingCheckIns(tx: TeamPg, limit: number): Promise<WaitingCheckIn[]> {
  const { rows } = await tx.client.query<WaitingCheckIn>(
    `select id, client_id as "clientId", coalesce(body->>'checkInId', dedupe_key) as "checkInId" from outbox
     where team_id = $1 and kind = $2 and sent_at is null and client_id is not null
     order by created_at, id limit $3 for update skip locked`,
    [tx.teamId, QUEUED_KIND, limit],
  );
  return rows;
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
