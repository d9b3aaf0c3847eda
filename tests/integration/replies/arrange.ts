import { ownerQuery, type TestTeam } from '../support/database.ts';

/** A question of a client with the answer it got; the id of the answer. */
export async function answered(
  team: TestTeam,
  clientId: string,
  { asked, told, at = '2026-11-20T09:00:00Z' }: { asked: string; told: string; at?: string },
): Promise<string> {
  const [row] = await ownerQuery<{ id: string }>(
    `with q as (insert into question (team_id, client_id, text, asked_at, answered_at)
       values ($1, $2, $3, $5::timestamptz - interval '3 hours', $5) returning id)
     insert into answer (team_id, question_id, by_id, text, created_at) select $1, q.id, $4, $6, $5 from q returning id`,
    [team.teamId, clientId, asked, team.memberId, at, told],
  );
  return row?.id ?? '';
}

/** A question that waits; its id. */
export async function asks(
  team: TestTeam,
  clientId: string,
  { text, at = '2026-11-24T09:00:00Z' }: { text: string; at?: string },
): Promise<string> {
  const [row] = await ownerQuery<{ id: string }>(
    'insert into question (team_id, client_id, text, asked_at) values ($1, $2, $3, $4) returning id',
    [team.teamId, clientId, text, at],
  );
  return row?.id ?? '';
}
