import type { TeamPg } from './client.ts';

export type KeptReply = { id: string; name: string; text: string; by: string; retiredAt: Date | null };

/** The team's kept replies by name, those that were retired last. */
export async function listKeptReplies(tx: TeamPg): Promise<KeptReply[]> {
  const { rows } = await tx.client.query<KeptReply>(
    `select k.id, k.name, k.text, m.name as by, k.retired_at as "retiredAt" from kept_reply k
     join member m on m.team_id = k.team_id and m.id = k.by_id
     where k.team_id = $1 order by k.retired_at is not null, lower(k.name), k.id`,
    [tx.teamId],
  );
  return rows;
}

/** One kept reply, retired or not; undefined: none of this team. */
export async function findKeptReply(
  tx: TeamPg,
  id: string,
): Promise<{ name: string; text: string } | undefined> {
  const { rows } = await tx.client.query<{ name: string; text: string }>(
    'select name, text from kept_reply where team_id = $1 and id = $2::uuid',
    [tx.teamId, id],
  );
  return rows[0];
}

/** Holds the names of the team's kept replies until the transaction ends; the id of another one with this name. */
export async function lockSameName(
  tx: TeamPg,
  { name, id }: { name: string; id: string | null },
): Promise<string | undefined> {
  await tx.client.query("select pg_advisory_xact_lock(hashtext('kept_reply'), hashtext($1::text))", [
    tx.teamId,
  ]);
  const { rows } = await tx.client.query<{ id: string }>(
    `select id from kept_reply where team_id = $1 and lower(name) = lower($2) and retired_at is null
       and ($3::uuid is null or id <> $3::uuid)`,
    [tx.teamId, name, id],
  );
  return rows[0]?.id;
}

type Keeping = { name: string; text: string; memberId: string; at: Date };

export async function insertKeptReply(tx: TeamPg, kept: Keeping): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into kept_reply (team_id, by_id, name, text, created_at) values ($1, $2, $3, $4, $5) returning id`,
    [tx.teamId, kept.memberId, kept.name, kept.text, kept.at],
  );
  return rows[0]?.id ?? '';
}

/** False: it is not there. */
export async function updateKeptReply(tx: TeamPg, id: string, kept: Keeping): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    'update kept_reply set name = $3, text = $4, by_id = $5 where team_id = $1 and id = $2::uuid',
    [tx.teamId, id, kept.name, kept.text, kept.memberId],
  );
  return rowCount === 1;
}

/** Takes a kept reply out of the lists, or back into them with `at` null; its name, or undefined: it is not there. */
export async function retireKeptReply(tx: TeamPg, id: string, at: Date | null): Promise<string | undefined> {
  const { rows } = await tx.client.query<{ name: string }>(
    'update kept_reply set retired_at = $3 where team_id = $1 and id = $2::uuid returning name',
    [tx.teamId, id, at],
  );
  return rows[0]?.name;
}

/** Remembers that this answer was kept for reuse. */
export async function markAnswerKept(tx: TeamPg, answerId: string): Promise<void> {
  await tx.client.query('update answer set kept_for_reuse = true where team_id = $1 and id = $2::uuid', [
    tx.teamId,
    answerId,
  ]);
}
