import type { HistoryCheckIn } from '#lib/domain/history.ts';
import type { Standing } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';
import { unpackFacts } from './packed-facts.ts';

export type PhoneClient = {
  name: string;
  zone: string;
  coachName: string;
  teamName: string;
  usualMinutes: number | null;
  under18: boolean;
  standing: Standing;
};
export type SaidByCoach = {
  id: string;
  text: string;
  by: string;
  at: Date;
  /** The question that is answered. */
  about: string | null;
  /** Ids of the stills of that question. */
  stills: string[];
  /** Words that no phone has shown yet; an answer never is. */
  unread: boolean;
  /** The film that words stand on, and their moment. */
  film: { clipId: string; rung: string; atSeconds: number } | null;
};

export async function findPhoneClient(tx: TeamPg, clientId: string): Promise<PhoneClient | undefined> {
  const { rows } = await tx.client.query<PhoneClient>(
    `select c.name, c.zone, m.name as "coachName", t.name as "teamName", c.usual_session_minutes as "usualMinutes",
       c.under18, c.standing
     from client c join member m on m.team_id = c.team_id and m.id = c.coach_id join team t on t.id = c.team_id
     where c.team_id = $1 and c.id = $2`,
    [tx.teamId, clientId],
  );
  return rows[0];
}

/** Effective check-ins from a date on, newest first. */
export async function listRecentCheckIns(
  tx: TeamPg,
  clientId: string,
  from: string,
): Promise<HistoryCheckIn[]> {
  const { rows } = await tx.client.query<{ date: string; facts: string }>(
    `select date, facts from day_rollup where team_id = $1 and client_id = $2 and date >= $3 order by date desc`,
    [tx.teamId, clientId, from],
  );
  const rungIds = new Map<string, string>();
  return rows.flatMap(({ date, facts }) =>
    unpackFacts(date, facts, rungIds).sort((a, b) => (a.sentAt < b.sentAt ? 1 : -1)),
  );
}

/** Ids of the stills of the question `q`, in the order in which they came. */
const STILLS = `array(select st.id::text from question_still st
  where st.team_id = q.team_id and st.question_id = q.id order by st.created_at, st.id)`;

/** What coaches wrote to the client and answered, newest first. */
export async function listSaidByCoach(tx: TeamPg, clientId: string, limit: number): Promise<SaidByCoach[]> {
  const { rows } = await tx.client.query<SaidByCoach>(
    `select said.id, said.text, m.name as by, said.at, said.about, said.stills, said.unread, said.film from (
       select w.team_id, w.id, w.text, w.by_id, w.created_at as at, null as about, '{}'::text[] as stills,
         w.read_at is null as unread, case when k.id is not null then jsonb_build_object('clipId', k.id, 'rung', r.name,
           'atSeconds', coalesce(w.at_seconds, 0)) end as film
       from coach_word w left join clip k on k.team_id = w.team_id and k.id = w.clip_id
       left join rung r on r.team_id = k.team_id and r.id = k.rung_id where w.team_id = $1 and w.client_id = $2
       union all
       select a.team_id, a.id, a.text, a.by_id, a.created_at, q.text, ${STILLS}, false, null::jsonb from answer a
       join question q on q.team_id = a.team_id and q.id = a.question_id
       where a.team_id = $1 and q.client_id = $2
     ) said join member m on m.team_id = said.team_id and m.id = said.by_id
     order by said.at desc, said.id limit $3`,
    [tx.teamId, clientId, limit],
  );
  return rows;
}

export async function findLastSeen(
  tx: TeamPg,
  clientId: string,
): Promise<{ by: string; at: Date } | undefined> {
  const { rows } = await tx.client.query<{ by: string; at: Date }>(
    `select m.name as by, s.at from seen_mark s join member m on m.team_id = s.team_id and m.id = s.by_id
     where s.team_id = $1 and s.client_id = $2 order by s.at desc limit 1`,
    [tx.teamId, clientId],
  );
  return rows[0];
}

export type OpenQuestion = { id: string; text: string; askedAt: Date; stills: string[] };

/** Questions without an answer yet, newest first. */
export async function listOpenQuestions(tx: TeamPg, clientId: string): Promise<OpenQuestion[]> {
  const { rows } = await tx.client.query<OpenQuestion>(
    `select q.id, q.text, q.asked_at as "askedAt", ${STILLS} as stills from question q
     where q.team_id = $1 and q.client_id = $2 and q.answered_at is null order by q.asked_at desc limit 20`,
    [tx.teamId, clientId],
  );
  return rows;
}

/** Films that the coach asked for and has not had. */
export async function listOpenFilmRequests(
  tx: TeamPg,
  clientId: string,
): Promise<{ rungId: string; side: string; angle: string; byDate: string | null; words: string }[]> {
  const { rows } = await tx.client.query<{
    rungId: string;
    side: string;
    angle: string;
    byDate: string | null;
    words: string;
  }>(
    `select rung_id as "rungId", side, angle, by_date as "byDate", words from film_request
     where team_id = $1 and client_id = $2 and done_at is null and taken_back_at is null
       and not exists (select from clip k where k.team_id = film_request.team_id and k.client_id = film_request.client_id
         and k.request_id = film_request.id
         and k.state in ('checking', 'ready', 'gone')) order by created_at`,
    [tx.teamId, clientId],
  );
  return rows;
}

export type LadderRow = {
  ladderId: string;
  ladder: string;
  skill: string;
  rungId: string;
  rung: string;
  position: number;
  measure: string;
  eachSide: boolean;
  passSets: number;
  passTarget: number;
  passDays: number;
  passTries: number | null;
};

/** The ladders on which the client stands, with all rungs in use and a retired one they stand on, easiest first. */
export async function listLaddersOf(tx: TeamPg, clientId: string): Promise<LadderRow[]> {
  const { rows } = await tx.client.query<LadderRow>(
    `select l.id as "ladderId", l.name as ladder, s.name as skill, r.id as "rungId", r.name as rung, r.position,
       d.measure, d.each_side as "eachSide", r.pass_sets as "passSets", r.pass_target as "passTarget",
       r.pass_days as "passDays", r.pass_tries as "passTries"
     from ladder l join rung r on r.team_id = l.team_id and r.ladder_id = l.id
     join drill d on d.team_id = r.team_id and d.id = r.drill_id
     join part p on p.team_id = l.team_id and p.id = l.part_id
     join skill s on s.team_id = p.team_id and s.id = p.skill_id
     where l.team_id = $1 and (r.retired_at is null or exists (
         select from placement x where x.team_id = $1 and x.client_id = $2 and x.rung_id = r.id and not exists (
           select from placement later where later.team_id = $1 and later.client_id = $2
             and later.ladder_id = x.ladder_id and later.side = x.side and later.from_date > x.from_date)))
       and l.id in (select ladder_id from placement where team_id = $1 and client_id = $2)
     order by s.position, l.position, r.position, r.retired_at is not null, r.id`,
    [tx.teamId, clientId],
  );
  return rows;
}

/** Where the client stands: the newest placement of each ladder and side up to a date. */
export async function listStanding(
  tx: TeamPg,
  clientId: string,
  date: string,
): Promise<{ ladderId: string; side: 'both' | 'left' | 'right'; rungId: string; from: string }[]> {
  const { rows } = await tx.client.query<{
    ladderId: string;
    side: 'both' | 'left' | 'right';
    rungId: string;
    from: string;
  }>(
    `select distinct on (ladder_id, side) ladder_id as "ladderId", side, rung_id as "rungId", from_date as "from"
     from placement where team_id = $1 and client_id = $2 and from_date <= $3
     order by ladder_id, side, from_date desc, created_at desc`,
    [tx.teamId, clientId, date],
  );
  return rows;
}
