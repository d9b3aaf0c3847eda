import type { TeamPg } from './client.ts';

/** Takes back an answer whose act no event of a reason tells of; the client's id, or undefined when there is none. */
export async function deleteLooseAnswer(tx: TeamPg, answerId: string): Promise<string | undefined> {
  const { rows } = await tx.client.query<{ clientId: string }>(
    `with gone as (
       delete from answer where team_id = $1 and id = $2::uuid and not exists (
         select from reason_event e where e.team_id = $1 and e.body->>'answerId' = $2::text)
       returning question_id
     )
     update question q set answered_at = null from gone
     where q.team_id = $1 and q.id = gone.question_id returning q.client_id as "clientId"`,
    [tx.teamId, answerId],
  );
  return rows[0]?.clientId;
}

/** The same for a mark of a client as a whole. */
export async function deleteLooseSeenMark(tx: TeamPg, seenMarkId: string): Promise<string | undefined> {
  const { rows } = await tx.client.query<{ clientId: string }>(
    `delete from seen_mark where team_id = $1 and id = $2::uuid and check_in_id is null and not exists (
       select from reason_event e where e.team_id = $1 and e.body->>'seenMarkId' = $2::text)
     returning client_id as "clientId"`,
    [tx.teamId, seenMarkId],
  );
  return rows[0]?.clientId;
}

export type WordTakenBack = { id: string; clientId: string; name: string; readAt: Date | null };

/** Takes back the words of one act, with who had read them. */
export async function deleteWordsOfAct(tx: TeamPg, actId: string): Promise<WordTakenBack[]> {
  const { rows } = await tx.client.query<WordTakenBack>(
    `delete from coach_word w using client c
     where w.team_id = $1 and w.act_id = $2::uuid and c.team_id = w.team_id and c.id = w.client_id
     returning w.id, w.client_id as "clientId", c.name, w.read_at as "readAt"`,
    [tx.teamId, actId],
  );
  return rows;
}

/** Whether a member did an act: by its events, or by the answer that is the act. */
export async function isActOf(tx: TeamPg, actId: string, memberId: string): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `select 1 from reason_event where team_id = $1 and body->>'actId' = $2::text and by_id = $3
     union all select 1 from answer where team_id = $1 and id = $2::uuid and by_id = $3 limit 1`,
    [tx.teamId, actId, memberId],
  );
  return rowCount === 1;
}
