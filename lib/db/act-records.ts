import type { Side } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';
import { idOf } from './id-of.ts';

type By = { memberId: string; at: Date };

export async function insertStepTaken(
  tx: TeamPg,
  step: {
    clientId: string;
    reasonId: string;
    kind: string;
    ladderId: string | null;
    side: Side | null;
    words: string;
    takenOn: string;
    reviewOn: string;
  },
  by: By,
): Promise<string> {
  return insertOne(
    tx,
    `insert into step_taken
       (team_id, by_id, created_at, client_id, reason_id, kind, ladder_id, side, words, taken_on, review_on, plan_version)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11,
       (select max(version) from plan where team_id = $1 and client_id = $4)) returning id`,
    by,
    [
      step.clientId,
      step.reasonId,
      step.kind,
      step.ladderId,
      step.side,
      step.words,
      step.takenOn,
      step.reviewOn,
    ],
  );
}

export async function insertVerdict(
  tx: TeamPg,
  verdict: { reasonId: string; rightToTell: boolean; text: string },
  by: By,
): Promise<string> {
  return insertOne(
    tx,
    `insert into verdict (team_id, by_id, at, reason_id, right_to_tell, text) values ($1, $2, $3, $4, $5, $6) returning id`,
    by,
    [verdict.reasonId, verdict.rightToTell, verdict.text],
  );
}

/** Marks the client as seen, with everything that has been sent so far: it names no single check-in. */
export async function insertSeenMark(tx: TeamPg, clientId: string, by: By): Promise<string> {
  return insertOne(
    tx,
    'insert into seen_mark (team_id, by_id, at, client_id) values ($1, $2, $3, $4) returning id',
    by,
    [clientId],
  );
}

/** Answers a question that still waits; undefined when it does not (or is not this client's). */
export async function insertAnswer(
  tx: TeamPg,
  answer: { clientId: string; questionId: string; text: string },
  by: By,
): Promise<string | undefined> {
  const marked = await tx.client.query(
    'update question set answered_at = $4 where team_id = $1 and id = $2 and client_id = $3 and answered_at is null',
    [tx.teamId, answer.questionId, answer.clientId, by.at],
  );
  if (marked.rowCount === 0) return undefined;
  return insertOne(
    tx,
    'insert into answer (team_id, by_id, created_at, question_id, text) values ($1, $2, $3, $4, $5) returning id',
    by,
    [answer.questionId, answer.text],
  );
}

export async function countWaitingQuestions(tx: TeamPg, clientId: string): Promise<number> {
  const { rows } = await tx.client.query<{ n: number }>(
    'select count(*)::int as n from question where team_id = $1 and client_id = $2 and answered_at is null',
    [tx.teamId, clientId],
  );
  return rows[0]?.n ?? 0;
}

/** Local dates of the client's check-ins since a date. */
export async function listCheckInDates(tx: TeamPg, clientId: string, since: string): Promise<string[]> {
  const { rows } = await tx.client.query<{ date: string }>(
    `select distinct date from check_in where team_id = $1 and client_id = $2 and date >= $3
       and replaced_at is null and deleted_at is null order by date`,
    [tx.teamId, clientId, since],
  );
  return rows.map((row) => row.date);
}

/** Takes back what an act wrote beside the reasons: steps and verdicts stay, marked as undone. */
export async function takeBackRecords(
  tx: TeamPg,
  ids: {
    stepId?: string | undefined;
    verdictId?: string | undefined;
    answerId?: string | undefined;
    questionId?: string | undefined;
    seenMarkId?: string | undefined;
  },
  at: Date,
): Promise<void> {
  const run = (sql: string, id: string | undefined, ...more: unknown[]) =>
    id === undefined ? undefined : tx.client.query(sql, [tx.teamId, id, ...more]);
  await run('update step_taken set undone_at = $3 where team_id = $1 and id = $2', ids.stepId, at);
  await run('delete from step_outcome where team_id = $1 and step_id = $2', ids.stepId);
  await run('update verdict set undone_at = $3 where team_id = $1 and id = $2', ids.verdictId, at);
  await run('delete from answer where team_id = $1 and id = $2', ids.answerId);
  await run('update question set answered_at = null where team_id = $1 and id = $2', ids.questionId);
  await run('delete from seen_mark where team_id = $1 and id = $2', ids.seenMarkId);
}

async function insertOne(tx: TeamPg, sql: string, by: By, values: unknown[]): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(sql, [tx.teamId, by.memberId, by.at, ...values]);
  return idOf(rows);
}
