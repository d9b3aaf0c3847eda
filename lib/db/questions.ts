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

/** Holds a question of this client until the transaction ends; false: no such question of theirs. */
export async function lockQuestion(
  tx: TeamPg,
  at: { clientId: string; questionId: string },
): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    'select 1 from question where team_id = $1 and client_id = $2::uuid and id = $3::uuid for update',
    [tx.teamId, at.clientId, at.questionId],
  );
  return rowCount === 1;
}

/** Ids of the stills of a question, in the order in which they came. */
export async function listStillIds(tx: TeamPg, questionId: string): Promise<string[]> {
  const { rows } = await tx.client.query<{ id: string }>(
    'select id from question_still where team_id = $1 and question_id = $2::uuid order by created_at, id',
    [tx.teamId, questionId],
  );
  return rows.map((row) => row.id);
}

export type StillToInsert = {
  id: string;
  clientId: string;
  /** Of a question, or of a moment of a clip. */
  questionId: string | null;
  clipId?: string;
  atSeconds?: number;
  storageKey: string;
  width: number;
  height: number;
  bytes: number;
  at: Date;
};

/** Keeps the row of a still; false: the id is taken. */
export async function insertStill(tx: TeamPg, still: StillToInsert): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `insert into question_still (team_id, id, client_id, question_id, storage_key, width, height, bytes, created_at,
       clip_id, at_seconds)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11) on conflict (team_id, id) do nothing`,
    [
      tx.teamId,
      still.id,
      still.clientId,
      still.questionId,
      still.storageKey,
      still.width,
      still.height,
      still.bytes,
      still.at,
      still.clipId ?? null,
      still.atSeconds ?? null,
    ],
  );
  return rowCount === 1;
}

/** Where a still lies; `clientId` null: any client of the team. */
export async function findStill(
  tx: TeamPg,
  stillId: string,
  clientId: string | null,
): Promise<{ key: string; clientId: string } | undefined> {
  const { rows } = await tx.client.query<{ key: string; clientId: string }>(
    `select storage_key as key, client_id as "clientId" from question_still
     where team_id = $1 and id = $2::uuid and ($3::uuid is null or client_id = $3::uuid)`,
    [tx.teamId, stillId, clientId],
  );
  return rows[0];
}

/** What a client asked; undefined: no such question of the team. */
export async function findQuestionText(tx: TeamPg, questionId: string): Promise<string | undefined> {
  const { rows } = await tx.client.query<{ text: string }>(
    'select text from question where team_id = $1 and id = $2::uuid',
    [tx.teamId, questionId],
  );
  return rows[0]?.text;
}
