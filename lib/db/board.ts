import { localDateOf } from '#lib/domain/local-date.ts';
import type { BoardClient, BoardNight, BoardReason, Contact } from '#lib/views/board-types.ts';
import type { TeamPg } from './client.ts';

/** The coach's local date and the team's coaches. */
export async function findBoardHead(
  tx: TeamPg,
  memberId: string | null,
  now: Date,
): Promise<{ today: string; zone: string; coaches: { id: string; name: string }[] }> {
  const { rows } = await tx.client.query<{ id: string; name: string; zone: string; today: string }>(
    `select id, name, zone, wall_clock(zone, $2)::date as today from member
     where team_id = $1 and left_at is null order by name, id`,
    [tx.teamId, now],
  );
  const self = rows.find((row) => row.id === memberId) ?? rows[0];
  return {
    today: self?.today ?? now.toISOString().slice(0, 10),
    zone: self?.zone ?? 'UTC',
    coaches: rows.map(({ id, name }) => ({ id, name })),
  };
}

/** The newest night, with its end on the coach's wall clock, and whether the next one is late. */
export async function findLastNight(tx: TeamPg, zone: string, now: Date): Promise<BoardNight | null> {
  const { rows } = await tx.client.query<BoardNight>(
    `select n.local_date as "localDate", to_char(wall_clock($2, n.finished_at), 'HH24:MI') as "endedAt",
       wall_clock($2, n.finished_at)::date as "endedOn",
       n.clients_due as due, n.clients_done as done, n.clients_failed as failed,
       case when n.finished_at is null then nights_to_come($1, n.local_date, $3) else 0 end as later,
       coalesce((select min(night_due_at(z.zone, n.local_date + 1)) + interval '1 hour' < $3
         from (select distinct zone from client where team_id = $1 and standing = any (night_standings())) z), false) as late
     from night_run n where n.team_id = $1 order by n.local_date desc limit 1`,
    [tx.teamId, zone, now],
  );
  return rows[0] ?? null;
}

/**
 * Every client of the team who has not left, with what the board says about each. One query, each part of it over
 * the whole team at once. `night`: the date whose ledger says who was checked; `today`: the coach's.
 */
export async function listBoardClients(
  tx: TeamPg,
  on: { zone: string; night: string | null; today: string; now: Date },
): Promise<BoardClient[]> {
  type Row = Omit<BoardClient, 'questions' | 'dates'> & {
    questions: BoardClient['questions'] | null;
    dates: string[] | null;
  };
  const { rows } = await tx.client.query<{ list: Row[] }>(
    // One value for all: JSON is parsed several times faster than rows and columns are.
    `with team as materialized (
       select id, name, coach_id, standing, zone, coalesce(joined_at, invited_at) as first_at
       from client where team_id = $1 and standing <> 'left'
     ), zones as materialized (
       select zone, $3::date is not null and night_due_at(zone, $3::date) <= $5 as due from team group by zone
     ), waiting as (
       select q.client_id, jsonb_agg(jsonb_build_object('id', q.id, 'text', q.text,
         'askedOn', to_char(wall_clock($2, q.asked_at), 'YYYY-MM-DD'),
         'askedAt', to_char(q.asked_at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'),
         'stills', array(select st.id from question_still st where st.team_id = q.team_id and st.question_id = q.id
           order by st.created_at, st.id)) order by q.asked_at, q.id) as list
       from question q where q.team_id = $1 and q.answered_at is null group by q.client_id
     ), returned as materialized (
       -- Back after 84 days and more: the first day with a word from them.
       select t.id, min(r.date) as day from team t join day_rollup r on r.team_id = $1 and r.client_id = t.id
         and r.date >= $4::date - 30
       where t.standing = 'back' and exists (select from day_rollup b where b.team_id = $1 and b.client_id = t.id
           and b.date < r.date - 84)
         and not exists (select from day_rollup b where b.team_id = $1 and b.client_id = t.id
           and b.date < r.date and b.date >= r.date - 84)
       group by t.id
     ), young as (
       select r.client_id, jsonb_agg(to_char(r.date, 'YYYY-MM-DD')) as dates
       from team t join day_rollup r on r.team_id = $1 and r.client_id = t.id and r.date >= $4::date - 28
       where t.first_at > $5 - interval '30 days' or t.id in (select id from returned) group by r.client_id
     )
     select coalesce(json_agg(each order by each.name, each.id), '[]') as list from (select c.id, c.name,
       c.coach_id as "coachId", c.standing, waiting.list as questions,
       case when c.first_at > $5 - interval '30 days' then to_char(wall_clock(c.zone, c.first_at), 'YYYY-MM-DD')
         else to_char(returned.day, 'YYYY-MM-DD') end as "firstDay",
       young.dates,
       case
         when not c.standing = any (night_standings()) or not zones.due or n.done_at is not null
           or (c.first_at > $5 - interval '3 days' and wall_clock(c.zone, c.first_at)::date > $3::date) then null
         when c.id in (select consent_taken_back($1)) then 'no-consent'
         when n.failed_at is not null then 'failed'
         else 'not-reached'
       end as "notChecked"
     from team c
     join zones on zones.zone = c.zone
     left join waiting on waiting.client_id = c.id
     left join young on young.client_id = c.id
     left join returned on returned.id = c.id
     left join night_client n on n.team_id = $1 and n.client_id = c.id and n.local_date = $3::date) each`,
    [tx.teamId, on.zone, on.night, on.today, on.now],
  );
  return (rows[0]?.list ?? []).map((row) => ({
    ...row,
    questions: row.questions ?? [],
    dates: row.dates ?? [],
  }));
}

/** Last check-in and last "seen" of some clients, by their id. */
export async function listContacts(
  tx: TeamPg,
  clientIds: string[],
  zone: string,
): Promise<Map<string, Contact>> {
  if (clientIds.length === 0) return new Map();
  const { rows } = await tx.client.query<Contact & { id: string }>(
    `select c.id, last.at as "lastCheckIn", seen.at as seen
     from client c
     left join lateral (
       select jsonb_build_object('date', to_char(w.at, 'YYYY-MM-DD'), 'time', to_char(w.at, 'HH24:MI')) as at
       from (
         select wall_clock(c.zone, i.sent_at) as at from check_in i
         where i.team_id = c.team_id and i.client_id = c.id and i.replaced_at is null and i.deleted_at is null
         order by i.date desc, i.sent_at desc limit 1
       ) w
     ) last on true
     left join lateral (
       select jsonb_build_object('date', to_char(w.at, 'YYYY-MM-DD'), 'time', to_char(w.at, 'HH24:MI')) as at
       from (
         select wall_clock($3, s.at) as at from seen_mark s
         where s.team_id = c.team_id and s.client_id = c.id order by s.at desc limit 1
       ) w
     ) seen on true
     where c.team_id = $1 and c.id = any($2::uuid[])`,
    [tx.teamId, clientIds, zone],
  );
  return new Map(rows.map(({ id, ...contact }) => [id, contact]));
}

/** Every skill that a client of the team trains for, by name. */
export async function listBoardSkills(tx: TeamPg): Promise<string[]> {
  const { rows } = await tx.client.query<{ name: string }>(
    `select k.name from goal g join skill k on k.team_id = g.team_id and k.id = g.skill_id
     where g.team_id = $1 and g.ended_on is null
     union select unnest(p.skills_in_focus) from plan p where p.team_id = $1 order by 1`,
    [tx.teamId],
  );
  return rows.map((row) => row.name);
}

/** Who trains for a skill: by a goal, or where there is none by the newest plan. */
export async function listClientsOfSkill(tx: TeamPg, skill: string): Promise<Set<string>> {
  const { rows } = await tx.client.query<{ id: string }>(
    `select c.id from client c
     left join lateral (
       select array_agg(k.name) as names from goal g join skill k on k.team_id = g.team_id and k.id = g.skill_id
       where g.team_id = c.team_id and g.client_id = c.id and g.ended_on is null
     ) goals on true
     where c.team_id = $1 and $2 = any (coalesce(goals.names, (select p.skills_in_focus from plan p
       where p.team_id = c.team_id and p.client_id = c.id order by p.version desc limit 1)))`,
    [tx.teamId, skill],
  );
  return new Set(rows.map((row) => row.id));
}

/** All reasons that are not closed and belong on the board, whatever their state. `zone`: the coach's. */
export async function listBoardReasons(tx: TeamPg, zone: string): Promise<BoardReason[]> {
  const { rows } = await tx.client.query<{ list: Omit<BoardReason, 'raisedOn'>[] }>(
    `select coalesce(json_agg(each order by each."clientId", each.points desc, each."raisedAt", each.id), '[]') as list from (select id, client_id as "clientId", kind, subject->>'ladderId' as "ladderId", level, points, tier, sentence, short, since,
       to_char(raised_at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') as "raisedAt", step->>'text' as step, clears, working->'daysKnown' as "daysKnown", state,
       aside_until as "asideUntil", with_client_until as "withClientUntil",
       case when known_on is not null then coalesce(known_words, '') end as "knownWords", tried.answer as tried
     from reason left join (
       select distinct on (s.reason_id) s.reason_id, jsonb_build_object('takenOn', s.taken_on,
         'windowDays', o.window_days, 'outcome', o.outcome) as answer
       from step_taken s join step_outcome o on o.team_id = s.team_id and o.step_id = s.id
       where s.team_id = $1 and s.undone_at is null
         and s.reason_id in (select id from reason r where r.team_id = $1 and r.closed_at is null)
       order by s.reason_id, s.taken_on desc, o.window_days desc
     ) tried on tried.reason_id = reason.id
     where team_id = $1 and closed_at is null and state in ('open', 'aside', 'with-client')) each`,
    [tx.teamId],
  );
  // A night raises many at one instant: each is asked for its date once.
  const dates = new Map<string, string>();
  const dateOf = (at: string): string => {
    const date = dates.get(at) ?? localDateOf(new Date(at), zone);
    dates.set(at, date);
    return date;
  };
  return (rows[0]?.list ?? []).map((row) => ({ ...row, raisedOn: dateOf(row.raisedAt) }));
}
