import type { Standing } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

export type ClientRow = {
  id: string;
  name: string;
  email: string | null;
  zone: string;
  standing: Standing;
  under18: boolean;
  goal: string;
  usualSessionMinutes: number | null;
  toldWeekAu: number | null;
  coach: string;
  invitedAt: Date;
  joinedAt: Date | null;
};
export type ClientListRow = {
  id: string;
  name: string;
  standing: Standing;
  zone: string;
  lastDate: string | null;
  lastSentAt: Date | null;
  openReasons: number;
};

const LIST_LIMIT = 2_000;

/** All clients of the team, in no order that a person would see. */
export async function listClients(tx: TeamPg): Promise<ClientListRow[]> {
  const { rows } = await tx.client.query<ClientListRow>(
    `select c.id, c.name, c.standing, c.zone, l.date as "lastDate", l.sent_at as "lastSentAt",
       (select count(*)::int from reason r where r.team_id = c.team_id and r.client_id = c.id and r.closed_at is null
          and r.tier is not null) as "openReasons"
     from client c
     left join lateral (select date, sent_at from check_in k where k.team_id = c.team_id and k.client_id = c.id
       and k.replaced_at is null and k.deleted_at is null order by k.date desc, k.sent_at desc limit 1) l on true
     where c.team_id = $1 order by c.id limit ${LIST_LIMIT}`,
    [tx.teamId],
  );
  return rows;
}

/** One client, or undefined: somebody else's and nobody's are the same. */
export async function findClient(tx: TeamPg, clientId: string): Promise<ClientRow | undefined> {
  const { rows } = await tx.client.query<ClientRow>(
    `select c.id, c.name, c.email, c.zone, c.standing, c.under18, c.goal, c.usual_session_minutes as "usualSessionMinutes",
       c.told_week_au as "toldWeekAu", m.name as coach, c.invited_at as "invitedAt", c.joined_at as "joinedAt"
     from client c join member m on m.team_id = c.team_id and m.id = c.coach_id
     where c.team_id = $1 and c.id = $2::uuid`,
    [tx.teamId, clientId],
  );
  return rows[0];
}

/** Under 18, as it was told at the start. */
export async function findIsMinor(tx: TeamPg, clientId: string): Promise<boolean> {
  const { rows } = await tx.client.query<{ under18: boolean }>(
    'select under18 from client where team_id = $1 and id = $2',
    [tx.teamId, clientId],
  );
  return rows[0]?.under18 === true;
}

export type ClientToInsert = {
  coachId: string;
  name: string;
  email: string | null;
  zone: string;
  under18: boolean;
  goal: string;
  usualSessionMinutes: number | null;
  toldWeekAu: number | null;
};

export async function insertClient(tx: TeamPg, client: ClientToInsert, now: Date): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into client (team_id, coach_id, name, email, zone, standing, under18, goal, usual_session_minutes,
       told_week_au, invited_at, created_at)
     values ($1, $2, $3, $4, $5, 'invited', $6, $7, $8, $9, $10, $10) returning id`,
    [
      tx.teamId,
      client.coachId,
      client.name,
      client.email,
      client.zone,
      client.under18,
      client.goal,
      client.usualSessionMinutes,
      client.toldWeekAu,
      now,
    ],
  );
  return rows[0]?.id ?? '';
}

export type ClinicianWordToInsert = {
  clientId: string;
  byId: string;
  date: string;
  region: string | null;
  side: string | null;
  words: string;
  reviewOn: string | null;
  /** About a yes of the start: which, who said it, and whether it allows what was held. */
  told?: string;
  clinician?: string;
  lifts?: boolean;
};

export async function insertClinicianWord(tx: TeamPg, word: ClinicianWordToInsert): Promise<void> {
  await tx.client.query(
    `insert into clinician_word (team_id, client_id, by_id, date, region, side, words, review_on, told, clinician, lifts)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)`,
    [
      tx.teamId,
      word.clientId,
      word.byId,
      word.date,
      word.region,
      word.side,
      word.words,
      word.reviewOn,
      word.told ?? null,
      word.clinician ?? '',
      word.lifts ?? false,
    ],
  );
}

export type NoteRow = { id: string; text: string; by: string; createdAt: Date };

export async function listNotes(tx: TeamPg, clientId: string): Promise<NoteRow[]> {
  const { rows } = await tx.client.query<NoteRow>(
    `select n.id, n.text, m.name as by, n.created_at as "createdAt" from private_note n
     join member m on m.team_id = n.team_id and m.id = n.by_id
     where n.team_id = $1 and n.client_id = $2::uuid order by n.created_at desc, n.id limit 50`,
    [tx.teamId, clientId],
  );
  return rows;
}

export async function insertNote(
  tx: TeamPg,
  note: { clientId: string; byId: string; text: string; now: Date },
): Promise<void> {
  await tx.client.query(
    'insert into private_note (team_id, client_id, by_id, text, created_at) values ($1, $2, $3, $4, $5)',
    [tx.teamId, note.clientId, note.byId, note.text, note.now],
  );
}

/** When coaches looked, newest first: at one check-in, or at the client as a whole (`checkInId` null). */
export async function listSeen(
  tx: TeamPg,
  clientId: string,
): Promise<{ at: string; by: string; checkInId: string | null }[]> {
  const { rows } = await tx.client.query<{ at: Date; by: string; checkInId: string | null }>(
    `select s.at, m.name as by, s.check_in_id as "checkInId" from seen_mark s
     join member m on m.team_id = s.team_id and m.id = s.by_id
     where s.team_id = $1 and s.client_id = $2::uuid order by s.at desc limit 400`,
    [tx.teamId, clientId],
  );
  return rows.map((mark) => ({ ...mark, at: mark.at.toISOString() }));
}

/** Names and addresses of all clients, also those who left: nobody is made twice. */
export async function listClientDoubles(tx: TeamPg): Promise<{ name: string; email: string | null }[]> {
  const { rows } = await tx.client.query<{ name: string; email: string | null }>(
    'select name, email from client where team_id = $1 order by created_at, id',
    [tx.teamId],
  );
  return rows;
}

/** One list at a time: two that are sent at once cannot both find a name free. */
export async function lockClientList(tx: TeamPg): Promise<void> {
  await tx.client.query('select pg_advisory_xact_lock(hashtextextended($1, 17))', [tx.teamId]);
}
