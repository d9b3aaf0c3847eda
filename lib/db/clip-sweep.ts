import { pool, type TeamPg, type TeamScope, teamScope } from './client.ts';

/** Teams with clips that stand still, are due, or whose last day is not said yet. */
export async function listTeamsWithClips(): Promise<TeamScope[]> {
  const { rows } = await pool().query<{ teamId: string }>(
    'select team_id as "teamId" from teams_with_clips()',
  );
  return rows.map((row) => teamScope(row.teamId));
}

/** Uploads to which nothing was added since; gone with this. Returns where their pieces lie. */
export async function deleteStandingUploads(
  tx: TeamPg,
  since: Date,
): Promise<{ id: string; clientId: string; storageKey: string }[]> {
  const { rows } = await tx.client.query<{ id: string; clientId: string; storageKey: string }>(
    `delete from clip where team_id = $1 and state = 'arriving' and greatest(coalesce(piece_at, created_at), writing_until) < $2
     returning id, client_id as "clientId", storage_key as "storageKey"`,
    [tx.teamId, since],
  );
  return rows;
}

/**
 * Says of clips that were looked at until which day they are kept: the team's days after the look, and never less than
 * `notice` days from now, so that both sides can read it before.
 */
export async function sayKeepUntil(tx: TeamPg, now: Date, notice: number): Promise<number> {
  const { rowCount } = await tx.client.query(
    `update clip k set keep_until = greatest((k.looked_at + make_interval(days => t.clip_keep_days))::date,
       ($2::timestamptz + make_interval(days => $3))::date)
     from team t where t.id = $1 and k.team_id = $1 and k.state = 'ready' and k.looked_at is not null
       and k.keep_until is null and k.pinned_at is null`,
    [tx.teamId, now, notice],
  );
  return rowCount ?? 0;
}

/** Clips whose last day is over: no longer kept. Their rows stay with what was seen. */
export async function letClipsGo(
  tx: TeamPg,
  now: Date,
): Promise<{ id: string; clientId: string; storageKey: string }[]> {
  const { rows } = await tx.client.query<{ id: string; clientId: string; storageKey: string }>(
    `update clip set state = 'gone' where team_id = $1 and state = 'ready' and pinned_at is null and keep_until < $2::date
     returning id, client_id as "clientId", storage_key as "storageKey"`,
    [tx.teamId, now],
  );
  return rows;
}

/** How many days a clip is kept after a look at it. A day that was said already is said anew. */
export async function setClipKeepDays(tx: TeamPg, days: number): Promise<void> {
  await tx.client.query('update team set clip_keep_days = $2 where id = $1', [tx.teamId, days]);
  await tx.client.query(`update clip set keep_until = null where team_id = $1 and state = 'ready'`, [
    tx.teamId,
  ]);
}
