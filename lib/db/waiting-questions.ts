import type { TeamPg } from './client.ts';

export type WaitingQuestion = {
  id: string;
  clientId: string;
  name: string;
  coachId: string;
  text: string;
  askedAt: string;
  stills: string[];
};

/** Every question that waits, of clients who have not left, oldest first. */
export async function listWaitingQuestions(tx: TeamPg): Promise<WaitingQuestion[]> {
  const { rows } = await tx.client.query<Omit<WaitingQuestion, 'askedAt'> & { askedAt: Date }>(
    `select q.id, c.id as "clientId", c.name, c.coach_id as "coachId", q.text, q.asked_at as "askedAt",
       array(select st.id::text from question_still st where st.team_id = q.team_id and st.question_id = q.id
         order by st.created_at, st.id) as stills
     from question q join client c on c.team_id = q.team_id and c.id = q.client_id
     where q.team_id = $1 and q.answered_at is null and c.standing <> 'left'
     order by q.asked_at, q.id`,
    [tx.teamId],
  );
  return rows.map((row) => ({ ...row, askedAt: row.askedAt.toISOString() }));
}

/** When coaches looked at these clients since a date, at one check-in or as a whole. */
export async function listSeenSince(
  tx: TeamPg,
  clientIds: readonly string[],
  since: string,
): Promise<Map<string, { at: string; by: string }[]>> {
  const { rows } = await tx.client.query<{ clientId: string; at: Date; by: string }>(
    `select s.client_id as "clientId", s.at, m.name as by from seen_mark s
     join member m on m.team_id = s.team_id and m.id = s.by_id
     where s.team_id = $1 and s.client_id = any($2::uuid[]) and s.at >= $3 order by s.at`,
    [tx.teamId, clientIds, since],
  );
  const marks = new Map<string, { at: string; by: string }[]>();
  for (const { clientId, at, by } of rows)
    marks.set(clientId, [...(marks.get(clientId) ?? []), { at: at.toISOString(), by }]);
  return marks;
}
