import { pool, type TeamPg } from './client.ts';

export type ErasureOrigin = 'client' | 'guardian' | 'lead' | 'retention';
export type ErasureAskRow = {
  id: string;
  clientId: string;
  name: string;
  coachId: string;
  origin: ErasureOrigin;
  by: string | null;
  words: string;
  receipt: string;
  askedAt: Date;
  dueAt: Date;
};

const ASK = `select a.id, a.client_id as "clientId", c.name, c.coach_id as "coachId", a.origin, m.name as by, a.words, a.receipt,
    a.asked_at as "askedAt", a.due_at as "dueAt"
  from erasure_ask a join client c on c.team_id = a.team_id and c.id = a.client_id
  left join member m on m.team_id = a.team_id and m.id = a.by_id
  where a.team_id = $1 and a.taken_back_at is null`;

/** Wishes that are not taken back, the nearest day first. */
export async function listErasureAsks(tx: TeamPg): Promise<ErasureAskRow[]> {
  return (await tx.client.query<ErasureAskRow>(`${ASK} order by a.due_at, a.id`, [tx.teamId])).rows;
}

export async function findErasureAsk(tx: TeamPg, clientId: string): Promise<ErasureAskRow | undefined> {
  const { rows } = await tx.client.query<ErasureAskRow>(
    `${ASK} and a.client_id = $2 order by a.due_at, a.id limit 1`,
    [tx.teamId, clientId],
  );
  return rows[0];
}

export type NewErasureAsk = {
  clientId: string;
  origin: ErasureOrigin;
  byId: string | null;
  words: string;
  receipt: string;
  at: Date;
  due: Date;
};

export async function insertErasureAsk(tx: TeamPg, ask: NewErasureAsk): Promise<void> {
  await tx.client.query(
    `insert into erasure_ask (team_id, client_id, origin, by_id, words, receipt, asked_at, due_at)
     values ($1, $2, $3, $4, $5, $6, $7, $8)`,
    [tx.teamId, ask.clientId, ask.origin, ask.byId, ask.words, ask.receipt, ask.at, ask.due],
  );
}

export async function takeBackErasureAsk(tx: TeamPg, id: string, at: Date): Promise<void> {
  await tx.client.query('update erasure_ask set taken_back_at = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    id,
    at,
  ]);
}

/** A line of the erase list: ids only. */
export type ErasureLine = {
  teamId: string;
  clientId: string;
  receipt: string;
  origin: string;
  askedAt: string;
  erasedAt: string;
};
export type DueErasure = { teamId: string; clientId: string; receipt: string; origin: string; askedAt: Date };

export async function listDueErasures(at: Date): Promise<DueErasure[]> {
  const { rows } = await pool().query<DueErasure>(
    `select team_id as "teamId", client_id as "clientId", receipt, origin, asked_at as "askedAt" from due_erasures($1)`,
    [at],
  );
  return rows;
}

/** Everything of one client, in this transaction. False: nobody of that id is in this team. */
export async function eraseClientRows(
  tx: TeamPg,
  of: { clientId: string; receipt: string; origin: string; askedAt: Date | string; at: Date | string },
): Promise<boolean> {
  const { rows } = await tx.client.query<{ done: boolean }>(
    'select erase_client($1, $2, $3, $4, $5) as done',
    [of.clientId, of.receipt, of.origin, of.askedAt, of.at],
  );
  return rows[0]?.done === true;
}

/** The erase list of every team, oldest first. */
export async function listErasures(): Promise<(ErasureLine & { filesLeft: string[] })[]> {
  const { rows } = await pool().query<
    Omit<ErasureLine, 'askedAt' | 'erasedAt'> & { askedAt: Date; erasedAt: Date; filesLeft: string[] }
  >(
    `select team_id as "teamId", client_id as "clientId", receipt, origin, asked_at as "askedAt", erased_at as "erasedAt",
       files_left as "filesLeft" from erase_list()`,
  );
  return rows.map((row) => ({
    ...row,
    askedAt: row.askedAt.toISOString(),
    erasedAt: row.erasedAt.toISOString(),
  }));
}

/** These files are gone. */
export async function forgetFiles(tx: TeamPg, clientId: string, keys: readonly string[]): Promise<void> {
  await tx.client.query(
    `update erasure set files_left = array(select unnest(files_left) except select unnest($3::text[]))
     where team_id = $1 and client_id = $2`,
    [tx.teamId, clientId, keys],
  );
}

export type ErasedRow = {
  receipt: string;
  origin: string;
  askedAt: Date;
  erasedAt: Date;
  rows: number;
  files: number;
};

/** What was deleted in the team, newest first. */
export async function listErased(tx: TeamPg): Promise<ErasedRow[]> {
  const { rows } = await tx.client.query<ErasedRow>(
    `select receipt, origin, asked_at as "askedAt", erased_at as "erasedAt", files,
       (select coalesce(sum(value::int), 0)::int from jsonb_each_text(e.rows)) as rows
     from erasure e where team_id = $1 order by erased_at desc, id limit 200`,
    [tx.teamId],
  );
  return rows;
}

export type ReceiptRow = {
  askedAt: Date;
  dueAt: Date | null;
  takenBackAt: Date | null;
  erasedAt: Date | null;
  rows: Record<string, number> | null;
  files: number | null;
  filesLeft: number | null;
};

/** What a receipt says, to whoever holds its number. */
export async function findReceipt(receipt: string): Promise<ReceiptRow | undefined> {
  const { rows } = await pool().query<ReceiptRow>(
    `select asked_at as "askedAt", due_at as "dueAt", taken_back_at as "takenBackAt", erased_at as "erasedAt", rows, files,
       files_left as "filesLeft" from receipt_of($1)`,
    [receipt],
  );
  return rows[0];
}
