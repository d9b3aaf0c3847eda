import type { BoardClient, BoardNight, BoardReason } from '#lib/views/board-types.ts';
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

/** The newest night, with its end on the coach's wall clock. */
export async function findLastNight(tx: TeamPg, zone: string): Promise<BoardNight | null> {
  const { rows } = await tx.client.query<BoardNight>(
    `select local_date as "localDate", to_char(wall_clock($2, finished_at), 'HH24:MI') as "endedAt",
       wall_clock($2, finished_at)::date as "endedOn",
       clients_due as due, clients_done as done, clients_failed as failed
     from night_run where team_id = $1 order by local_date desc limit 1`,
    [tx.teamId, zone],
  );
  return rows[0] ?? null;
}

/** Every client of the team who has not left, with what the board says about each. One query. */
export async function listBoardClients(
  tx: TeamPg,
  zone: string,
  night: string | null,
): Promise<BoardClient[]> {
  const { rows } = await tx.client.query<BoardClient>(
    `select c.id, c.name, c.coach_id as "coachId", c.standing,
       last.at as "lastCheckIn", seen.at as seen,
       coalesce(waiting.list, '[]'::jsonb) as questions,
       coalesce(goals.names, plan.skills_in_focus, '{}') as skills,
       n.client_id is not null as "notChecked"
     from client c
     left join lateral (
       select jsonb_build_object('date', to_char(w.at, 'YYYY-MM-DD'), 'time', to_char(w.at, 'HH24:MI')) as at
       from (
         select wall_clock(c.zone, i.sent_at) as at from check_in i
         where i.team_id = c.team_id and i.client_id = c.id and i.replaced_at is null and i.deleted_at is null
         order by i.sent_at desc limit 1
       ) w
     ) last on true
     left join lateral (
       select jsonb_build_object('date', to_char(w.at, 'YYYY-MM-DD'), 'time', to_char(w.at, 'HH24:MI')) as at
       from (
         select wall_clock($2, s.at) as at from seen_mark s
         where s.team_id = c.team_id and s.client_id = c.id order by s.at desc limit 1
       ) w
     ) seen on true
     left join lateral (
       select jsonb_agg(jsonb_build_object('id', q.id, 'text', q.text,
         'askedOn', to_char(wall_clock($2, q.asked_at), 'YYYY-MM-DD'),
         'stills', array(select st.id from question_still st where st.team_id = q.team_id and st.question_id = q.id
           order by st.created_at, st.id)) order by q.asked_at, q.id) as list
       from question q where q.team_id = c.team_id and q.client_id = c.id and q.answered_at is null
     ) waiting on true
     left join lateral (
       select array_agg(distinct k.name) as names from goal g
       join skill k on k.team_id = g.team_id and k.id = g.skill_id
       where g.team_id = c.team_id and g.client_id = c.id and g.ended_on is null
     ) goals on true
     left join lateral (
       select p.skills_in_focus from plan p
       where p.team_id = c.team_id and p.client_id = c.id order by p.version desc limit 1
     ) plan on true
     left join night_client n
       on n.team_id = c.team_id and n.client_id = c.id and n.local_date = $3 and n.done_at is null
     where c.team_id = $1 and c.standing <> 'left'
     order by c.name, c.id`,
    [tx.teamId, zone, night],
  );
  return rows;
}

/** All reasons that are not closed and belong on the board, whatever their state. */
export async function listBoardReasons(tx: TeamPg): Promise<BoardReason[]> {
  const { rows } = await tx.client.query<Omit<BoardReason, 'raisedAt'> & { raisedAt: Date }>(
    `select id, client_id as "clientId", kind, subject, level, points, tier, sentence, short, since,
       raised_at as "raisedAt", step, clears, working->'daysKnown' as "daysKnown", state,
       aside_until as "asideUntil", with_client_until as "withClientUntil"
     from reason
     where team_id = $1 and closed_at is null and state in ('open', 'aside', 'with-client')
     order by client_id, points desc, raised_at, id`,
    [tx.teamId],
  );
  return rows.map((row) => ({ ...row, raisedAt: row.raisedAt.toISOString() }));
}
