import type { TeamPg } from './client.ts';

type Asked = { id: string; clientId: string; text: string; at: Date };

/** Keeps a question once: the same id again changes nothing. Returns whether what is kept is this one. */
export async function insertQuestionOnce(tx: TeamPg, asked: Asked): Promise<boolean> {
  await tx.client.query(
    `insert into question (team_id, id, client_id, text, asked_at) values ($1, $2, $3, $4, $5)
     on conflict (team_id, id) do nothing`,
    [tx.teamId, asked.id, asked.clientId, asked.text, asked.at],
  );
  const { rows } = await tx.client.query<{ same: boolean }>(
    'select client_id = $3 and text = $4 as same from question where team_id = $1 and id = $2',
    [tx.teamId, asked.id, asked.clientId, asked.text],
  );
  return rows[0]?.same === true;
}
