import type { TeamPg } from './client.ts';

export type ClientOnPhone = {
  name: string;
  zone: string;
  coachId: string;
  coachName: string;
  under18: boolean;
};
export type SubmittedCheckIn = { clientId: string; bodyHash: string; receivedAt: Date };
export type NewCheckIn = {
  id: string;
  clientId: string;
  correctsId: string | null;
  bodyHash: string;
  date: string;
  zone: string;
  startedAt: string | null;
  sentAt: Date;
  receivedAt: Date;
  kind: string;
  session: string | null;
  planVersion: number | null;
  effort: number | null;
  minutes: number | null;
  ground: string | null;
  sleepHours: number | null;
  nothingHurts: boolean;
  words: string;
};
type Parts = { sets: object[]; pain: object[]; dangerSigns: object[] };

/** Reads the client and holds the row, so that one client's submits come one after the other. */
export async function lockClient(tx: TeamPg, clientId: string): Promise<ClientOnPhone | undefined> {
  const { rows } = await tx.client.query<ClientOnPhone>(
    `select c.name, c.zone, c.coach_id as "coachId", m.name as "coachName", c.under18
     from client c join member m on m.team_id = c.team_id and m.id = c.coach_id
     where c.team_id = $1 and c.id = $2 for no key update of c`,
    [tx.teamId, clientId],
  );
  return rows[0];
}

export async function setZone(tx: TeamPg, clientId: string, zone: string): Promise<void> {
  await tx.client.query('update client set zone = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    clientId,
    zone,
  ]);
}

export async function findSubmitted(tx: TeamPg, id: string): Promise<SubmittedCheckIn | undefined> {
  const { rows } = await tx.client.query<SubmittedCheckIn>(
    `select client_id as "clientId", body_hash as "bodyHash", received_at as "receivedAt"
     from check_in where team_id = $1 and id = $2`,
    [tx.teamId, id],
  );
  return rows[0];
}

/** The client's own check-in that is to be corrected. */
export async function findOwn(
  tx: TeamPg,
  clientId: string,
  id: string,
): Promise<{ date: string; replaced: boolean } | undefined> {
  const { rows } = await tx.client.query<{ date: string; replaced: boolean }>(
    `select date, replaced_at is not null as replaced from check_in
     where team_id = $1 and client_id = $2 and id = $3 and deleted_at is null`,
    [tx.teamId, clientId, id],
  );
  return rows[0];
}

/** The id that a check-in had before it was ever corrected. */
export async function findFirstVersion(tx: TeamPg, id: string): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `with recursive chain(id, corrects_id) as (
       select id, corrects_id from check_in where team_id = $1 and id = $2
       union select k.id, k.corrects_id from check_in k join chain on k.team_id = $1 and k.id = chain.corrects_id)
     select id from chain where corrects_id is null`,
    [tx.teamId, id],
  );
  return rows[0]?.id ?? id;
}

/** Another effective training check-in with this session's name on this date. */
export async function findSameSession(
  tx: TeamPg,
  of: { clientId: string; date: string; session: string; exceptId: string | null },
): Promise<string | undefined> {
  const { rows } = await tx.client.query<{ id: string }>(
    `select id from check_in where team_id = $1 and client_id = $2 and date = $3 and session = $4
       and kind = 'training' and replaced_at is null and deleted_at is null and id is distinct from $5 limit 1`,
    [tx.teamId, of.clientId, of.date, of.session, of.exceptId],
  );
  return rows[0]?.id;
}

export async function markReplaced(tx: TeamPg, id: string, at: Date): Promise<void> {
  await tx.client.query('update check_in set replaced_at = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    id,
    at,
  ]);
}

/** The row stays; from now on it counts for nothing. */
export async function markDeleted(tx: TeamPg, id: string, at: Date): Promise<void> {
  await tx.client.query('update check_in set deleted_at = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    id,
    at,
  ]);
}

export async function isDeletedOwn(tx: TeamPg, clientId: string, id: string): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    'select from check_in where team_id = $1 and client_id = $2 and id = $3 and deleted_at is not null',
    [tx.teamId, clientId, id],
  );
  return rowCount === 1;
}

const INSERT_CHECK_IN = `with head as (
    insert into check_in (team_id, id, client_id, corrects_id, body_hash, date, zone, started_at, sent_at, received_at,
      kind, session, plan_version, effort, minutes, ground, sleep_hours, nothing_hurts, words)
    values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16, $17, $18, $19)
  ), sets as (
    insert into check_in_set (team_id, check_in_id, client_id, rung_id, side, idx, planned, value, tried, how, clean,
      faults, support, added_kg)
    select $1, $2, $3, "rungId", side, "index", planned, value, tried, how, clean, faults, support, "addedKg"
    from jsonb_to_recordset($20::jsonb) as told("rungId" uuid, side text, "index" int, planned float8, value float8,
      tried int, how text, clean boolean, faults text[], support text, "addedKg" float8)
  ), pain as (
    insert into pain_score (team_id, check_in_id, client_id, region, side, moment, value, kind, usual)
    select $1, $2, $3, region, side, moment, value, kind, usual
    from jsonb_to_recordset($21::jsonb) as told(region text, side text, moment text, value int, kind text, usual boolean)
  )
  insert into danger_sign_told (team_id, check_in_id, client_id, sign, gone_within_minute, region, side)
  select $1, $2, $3, sign, "goneWithinMinute", region, side
  from jsonb_to_recordset($22::jsonb) as told(sign text, "goneWithinMinute" boolean, region text, side text)`;

/** Writes the check-in with everything inside it. */
export async function insertCheckIn(tx: TeamPg, row: NewCheckIn, parts: Parts): Promise<void> {
  await tx.client.query(INSERT_CHECK_IN, [
    tx.teamId,
    row.id,
    row.clientId,
    row.correctsId,
    row.bodyHash,
    row.date,
    row.zone,
    row.startedAt,
    row.sentAt,
    row.receivedAt,
    row.kind,
    row.session,
    row.planVersion,
    row.effort,
    row.minutes,
    row.ground,
    row.sleepHours,
    row.nothingHurts,
    row.words,
    JSON.stringify(parts.sets),
    JSON.stringify(parts.pain),
    JSON.stringify(parts.dangerSigns),
  ]);
}

export async function insertQuestion(
  tx: TeamPg,
  asked: { clientId: string; checkInId: string | null; text: string; at: Date },
): Promise<void> {
  await tx.client.query(
    'insert into question (team_id, client_id, check_in_id, text, asked_at) values ($1, $2, $3, $4, $5)',
    [tx.teamId, asked.clientId, asked.checkInId, asked.text, asked.at],
  );
}

/** `change`: what became of a check-in, or of a film or a verdict on one; the id is then theirs. */
type Changed = {
  clientId: string;
  checkInId: string;
  change?: 'deleted' | 'looked' | 'waits' | 'seen' | 'unseen';
};

/** Asks the worker to run this client's checks soon, once for each change; the night would find it anyway. */
export async function insertAfterCheckIn(
  tx: TeamPg,
  { clientId, checkInId, change }: Changed,
): Promise<void> {
  const once = change ? `${checkInId} ${change}` : checkInId;
  await tx.client.query(
    `insert into outbox (team_id, kind, client_id, dedupe_key, body) values ($1, 'after-check-in', $2, $3, $4)
     on conflict (team_id, kind, dedupe_key) do nothing`,
    [tx.teamId, clientId, once, JSON.stringify({ clientId, checkInId })],
  );
}
