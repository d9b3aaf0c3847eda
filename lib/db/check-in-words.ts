import type { Side } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

export type SetPlace = { rungId: string; side: Side; index: number };
export type CheckInWord = {
  id: string;
  /** As it stands now: words on a check-in that was corrected stand on its correction. */
  checkInId: string;
  date: string;
  session: string | null;
  /** The set they are about, counted from 1 within drill and side; null: about the day. */
  set: { rungId: string; rung: string; side: Side; number: number } | null;
  text: string;
  by: string;
  at: Date;
  readAt: Date | null;
};

/** What coaches wrote on a client's check-ins of a date or later, in the order in which it was written. */
export async function listCheckInWords(tx: TeamPg, clientId: string, from: string): Promise<CheckInWord[]> {
  const { rows } = await tx.client.query<CheckInWord>(
    `with recursive stands as (
       select w.id as word_id, w.check_in_id as check_in_id, 0 as step from coach_word w
       where w.team_id = $1 and w.client_id = $2::uuid and w.check_in_id is not null
       union all
       select s.word_id, k.id, s.step + 1 from stands s
       join check_in k on k.team_id = $1 and k.client_id = $2::uuid and k.corrects_id = s.check_in_id
     ), newest as (select distinct on (word_id) word_id, check_in_id from stands order by word_id, step desc)
     select w.id, k.id as "checkInId", k.date::text, k.session, w.text, m.name as by, w.created_at as at, w.read_at as "readAt",
       case when s.id is not null then jsonb_build_object('rungId', s.rung_id, 'rung', r.name, 'side', s.side, 'number', (
         select count(*) from check_in_set o where o.team_id = s.team_id and o.check_in_id = s.check_in_id
           and o.rung_id = s.rung_id and o.side = s.side and o.idx <= s.idx)) end as set
     from newest n
     join coach_word w on w.team_id = $1 and w.id = n.word_id
     join check_in k on k.team_id = $1 and k.id = n.check_in_id
     join member m on m.team_id = w.team_id and m.id = w.by_id
     left join check_in_set s on s.team_id = w.team_id and s.id = w.set_id
     left join rung r on r.team_id = s.team_id and r.id = s.rung_id
     where k.date >= $3::date order by w.created_at, w.id`,
    [tx.teamId, clientId, from],
  );
  return rows;
}

export type CheckInState = { replaced: boolean; deleted: boolean };

/** Whether a check-in of this client still counts; undefined: no such check-in of theirs. */
export async function findCheckInState(
  tx: TeamPg,
  at: { clientId: string; checkInId: string },
): Promise<CheckInState | undefined> {
  const { rows } = await tx.client.query<CheckInState>(
    `select replaced_at is not null as replaced, deleted_at is not null as deleted from check_in
     where team_id = $1 and client_id = $2::uuid and id = $3::uuid for share`,
    [tx.teamId, at.clientId, at.checkInId],
  );
  return rows[0];
}

export async function findSetId(tx: TeamPg, checkInId: string, set: SetPlace): Promise<string | undefined> {
  const { rows } = await tx.client.query<{ id: string }>(
    `select id from check_in_set
     where team_id = $1 and check_in_id = $2::uuid and rung_id = $3::uuid and side = $4 and idx = $5`,
    [tx.teamId, checkInId, set.rungId, set.side, set.index],
  );
  return rows[0]?.id;
}

export async function insertCheckInWord(
  tx: TeamPg,
  word: { clientId: string; checkInId: string; setId: string | null; text: string },
  by: { memberId: string; at: Date },
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into coach_word (team_id, client_id, by_id, check_in_id, set_id, text, created_at)
     values ($1, $2, $3, $4, $5, $6, $7) returning id`,
    [tx.teamId, word.clientId, by.memberId, word.checkInId, word.setId, word.text, by.at],
  );
  return rows[0]?.id ?? '';
}

/** Marks one check-in as seen, once a member; returns the id of the new mark, undefined when it was marked before. */
export async function insertCheckInSeen(
  tx: TeamPg,
  at: { clientId: string; checkInId: string },
  by: { memberId: string; at: Date },
): Promise<string | undefined> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into seen_mark (team_id, client_id, by_id, check_in_id, at)
     select $1, $2, $3, $4, $5 where not exists (
       select from seen_mark where team_id = $1 and client_id = $2::uuid and by_id = $3::uuid and check_in_id = $4::uuid)
     returning id`,
    [tx.teamId, at.clientId, by.memberId, at.checkInId, by.at],
  );
  return rows[0]?.id;
}

/** Says that the client was shown these words: the first time counts. */
export async function markWordsRead(
  tx: TeamPg,
  read: { clientId: string; wordIds: readonly string[]; at: Date },
): Promise<void> {
  await tx.client.query(
    `update coach_word set read_at = $4 where team_id = $1 and client_id = $2::uuid and id = any($3::uuid[]) and read_at is null`,
    [tx.teamId, read.clientId, read.wordIds, read.at],
  );
}
