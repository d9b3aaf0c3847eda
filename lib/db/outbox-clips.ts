import type { TeamPg } from './client.ts';

const KIND = 'check-clip';

/** Clips that wait to be decoded: what was never handed on, and what was 1, 3, 7 … minutes ago without an end. */
export async function listWaitingClips(tx: TeamPg, limit: number): Promise<{ id: string; clipId: string }[]> {
  const { rows } = await tx.client.query<{ id: string; clipId: string }>(
    `select id, dedupe_key as "clipId" from outbox where team_id = $1 and kind = $2 and sent_at is null
       and (attempts = 0 or created_at + interval '1 minute' * (power(2, least(attempts, 12)) - 1) <= now())
     order by created_at, id limit $3 for update skip locked`,
    [tx.teamId, KIND, limit],
  );
  return rows;
}

/** The clip is decided: its line is done. */
export async function closeClipChecks(tx: TeamPg, clipId: string, at: Date): Promise<void> {
  await tx.client.query(
    `update outbox set sent_at = $4, attempts = attempts + 1, last_error = null
     where team_id = $1 and kind = $2 and dedupe_key = $3 and sent_at is null`,
    [tx.teamId, KIND, clipId, at],
  );
}

export async function noteClipFailure(tx: TeamPg, clipId: string, error: string): Promise<void> {
  await tx.client.query(
    'update outbox set last_error = $4 where team_id = $1 and kind = $2 and dedupe_key = $3 and sent_at is null',
    [tx.teamId, KIND, clipId, error],
  );
}
