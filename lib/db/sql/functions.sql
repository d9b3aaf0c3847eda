
-- ---- The night: who owes which local date (called by the worker, across teams) ----

-- Standings that have a night. Invited ones only because somebody may never come in; paused and left have none.
create or replace function public.night_standings() returns text[]
language sql immutable as $$ select array['invited', 'starting', 'in-training', 'ending', 'back'] $$;

-- The wall clock of a zone. A zone that PostgreSQL does not know must not stop everybody's night: then UTC.
create or replace function public.wall_clock(zone text, at timestamptz) returns timestamp
language plpgsql stable set search_path = pg_catalog as $$
begin
  return timezone(zone, at);
exception when invalid_parameter_value then
  return timezone('UTC', at);
end
$$;

-- False for a local date that a zone skipped as a whole (Apia had no 30 December 2011).
create or replace function public.local_date_exists(zone text, day date) returns boolean
language plpgsql stable set search_path = pg_catalog as $$
begin
  return timezone(zone, timezone(zone, day + time '12:00'))::date = day;
exception when invalid_parameter_value then
  return true;
end
$$;

-- The instant when the night of a local date is due: 03:00 of the next date, where the client lives.
create or replace function public.night_due_at(zone text, day date) returns timestamptz
language plpgsql stable set search_path = pg_catalog as $$
begin
  return timezone(zone, (day + 1) + time '03:00');
exception when invalid_parameter_value then
  return timezone('UTC', (day + 1) + time '03:00');
end
$$;

-- True where the client took back the consent to keep and check what they tell, and gave none since.
create or replace function public.is_consent_withdrawn(of_team uuid, of_client uuid) returns boolean
language sql stable set search_path = public as $$
  select exists (
    select from consent c where c.team_id = of_team and c.client_id = of_client and c.kind = 'health-data' and c.withdrawn_by is not null
  ) and not exists (
    select from consent c where c.team_id = of_team and c.client_id = of_client and c.kind = 'health-data' and c.withdrawn_at is null
  )
$$;

-- Who took the consent to checks back and has not given it again: no night, whatever the standing.
create or replace function public.consent_taken_back(of_team uuid) returns setof uuid
language sql stable set search_path = public as $$
  select distinct c.client_id from consent c
  where c.team_id = of_team and c.kind = 'health-data' and c.withdrawn_by is not null
    and is_consent_withdrawn(c.team_id, c.client_id)
$$;

-- Clients of a team whose night of a date is still to come: where they live it is not 03:00 yet.
create or replace function public.nights_to_come(of_team uuid, day date, at timestamptz) returns integer
language sql stable set search_path = public as $$
  with later as materialized (
    select z.zone from (select distinct zone from client where team_id = of_team and standing = any (night_standings())) z
    where night_due_at(z.zone, day) > at
  )
  select count(*)::int from client c join later on later.zone = c.zone
  where c.team_id = of_team and c.standing = any (night_standings())
    and c.id not in (select consent_taken_back(of_team))
    and (coalesce(c.joined_at, c.invited_at) < day - interval '2 days' -- long ago: wherever that is
      or wall_clock(c.zone, coalesce(c.joined_at, c.invited_at))::date <= day)
    and not exists (select from night_client n
      where n.team_id = of_team and n.client_id = c.id and n.local_date = day and n.done_at is not null)
$$;

-- The newest night that is due at an instant in a zone.
create or replace function public.last_night(zone text, at timestamptz) returns date
language sql stable set search_path = public as $$ select (wall_clock(zone, at) - interval '3 hours')::date - 1 $$;

-- Night D is owed when 03:00 of D + 1 has passed on the client's wall clock and the ledger has no finished row for it.
-- At most `cap` nights back; a client's night that failed five times waits for a person (Nights page).
-- `team` and `clients` narrow it down; null: everybody.
create or replace function public.owed_nights_of(at timestamptz, cap integer, team uuid, clients uuid[])
returns table (team_id uuid, client_id uuid, local_date date)
language sql stable security definer set search_path = public as $$
  with known as materialized (
    select c.team_id, c.id, c.zone, coalesce(c.joined_at, c.invited_at) as since
    from client c
    where c.standing = any (night_standings())
      and (team is null or c.team_id = team)
      and (clients is null or c.id = any (clients))
      and not exists (
        select from consent w where w.team_id = c.team_id and w.client_id = c.id and w.kind = 'health-data'
          and w.withdrawn_by is not null and is_consent_withdrawn(c.team_id, c.id)
      )
  ),
  -- A zone is asked for its clock once, not for each client: what catches an unknown zone costs more than the rest.
  last as materialized (
    select zones.zone, last_night(zones.zone, at) as day from (select distinct k.zone from known k) zones
  ),
  span as materialized (
    -- Days of a pause owe nothing, also once it is over; nor do days without consent.
    select k.team_id, k.id, k.zone, last.day as last, greatest(last.day - (cap - 1),
      case when k.since > at - make_interval(days => cap + 3) then wall_clock(k.zone, k.since)::date end,
      (select max(s.from_date) from standing_change s where s.team_id = k.team_id and s.client_id = k.id
         and s.applied_at is not null and s.undone_at is null and not s.before = any (night_standings())),
      (select wall_clock(k.zone, max(g.given_at))::date
       from consent w join consent g on g.team_id = w.team_id and g.client_id = w.client_id and g.kind = w.kind
         and g.given_at >= w.withdrawn_at
       where w.team_id = k.team_id and w.client_id = k.id and w.kind = 'health-data' and w.withdrawn_by is not null)) as first
    from known k join last on last.zone = k.zone
  ),
  owed as materialized (
    select s.team_id, s.id, s.zone, s.first + step as day
    from span s
    cross join lateral (
      select coalesce(array_agg(n.local_date), '{}') as days from night_client n
      where n.team_id = s.team_id and n.client_id = s.id and n.local_date between s.first and s.last
        and (n.done_at is not null or n.attempts >= 5)
    ) finished
    cross join lateral generate_series(0, s.last - s.first) step
    where s.first + step <> all (finished.days)
  )
  select o.team_id, o.id, o.day from owed o where local_date_exists(o.zone, o.day)
  order by o.day, o.team_id, o.id
$$;
revoke all on function public.owed_nights_of(timestamptz, integer, uuid, uuid[]) from public;
grant execute on function public.owed_nights_of(timestamptz, integer, uuid, uuid[]) to plumbline_app;

create or replace function public.owed_nights(at timestamptz, cap integer)
returns table (team_id uuid, client_id uuid, local_date date)
language sql stable security definer set search_path = public as $$
  select * from owed_nights_of(at, cap, null, null)
$$;
revoke all on function public.owed_nights(timestamptz, integer) from public;
grant execute on function public.owed_nights(timestamptz, integer) to plumbline_app;

-- Nights that fell out of the `cap` that are caught up before they were run, and that nobody was told of: one row for a
-- client. Counted from the last date before the cap that the ledger knows, so that each date is found once; nothing is
-- left out of days before the client was known here.
create or replace function public.left_out_nights(at timestamptz, cap integer)
returns table (team_id uuid, client_id uuid, from_date date, to_date date, nights integer)
language sql stable security definer set search_path = public as $$
  select c.team_id, c.id, left_out.first, span.last, left_out.nights
  from client c
  cross join lateral (select last_night(c.zone, at) - cap as last) span
  cross join lateral (
    select greatest(
      wall_clock(c.zone, greatest(coalesce(c.joined_at, c.invited_at), c.created_at))::date,
      (select max(s.from_date) from standing_change s where s.team_id = c.team_id and s.client_id = c.id
         and s.applied_at is not null and s.undone_at is null and not s.before = any (night_standings())),
      (select max(n.local_date) + 1 from night_client n
         where n.team_id = c.team_id and n.client_id = c.id and n.local_date <= span.last),
      (select max(o.to_date) + 1 from night_left_out o
         where o.team_id = c.team_id and o.client_id = c.id and o.to_date <= span.last)) as day
  ) since
  cross join lateral (
    select min(day)::date as first, count(*)::int as nights
    from generate_series(since.day::timestamp, span.last::timestamp, interval '1 day') day
    where local_date_exists(c.zone, day::date)
  ) left_out
  where c.standing = any (night_standings()) and since.day <= span.last and left_out.nights > 0
  order by c.team_id, c.id
$$;
revoke all on function public.left_out_nights(timestamptz, integer) from public;
grant execute on function public.left_out_nights(timestamptz, integer) to plumbline_app;

-- Teams with something in the outbox that has not been delivered.
create or replace function public.teams_with_outbox(of_kind text) returns table (team_id uuid)
language sql stable security definer set search_path = public as $$
  select distinct o.team_id from outbox o where o.sent_at is null and o.kind = of_kind
$$;
revoke all on function public.teams_with_outbox(text) from public;
grant execute on function public.teams_with_outbox(text) to plumbline_app;

-- Name of the newest migration that is applied, for the readiness answer.
create or replace function public.migration_level() returns text
language sql stable security definer set search_path = public as $$
  select max(migration_name) from _prisma_migrations where finished_at is not null and rolled_back_at is null
$$;
revoke all on function public.migration_level() from public;
grant execute on function public.migration_level() to plumbline_app;

-- ---- Accounts: the only looks across teams that the web makes (sign-in, entry links) ----

-- Who a signed-in user is: a member first, else a client, else a guardian. Nobody once they left.
create or replace function public.actor_of(of_user uuid)
returns table (team_id uuid, team_name text, role text, member_id uuid, client_id uuid, name text)
language sql stable security definer set search_path = public as $$
  select found.team_id, t.name, found.role, found.member_id, found.client_id, found.name
  from (
    select 1 as rank, m.created_at, m.team_id, m.role, m.id as member_id, null::uuid as client_id, m.name
    from member m where m.user_id = of_user and m.left_at is null
    union all
    select 2, c.created_at, c.team_id, 'client', null, c.id, c.name
    from client c where c.user_id = of_user and c.standing <> 'left'
    union all
    select 3, g.created_at, g.team_id, 'guardian', null, g.client_id, g.name
    from guardian g join client c on c.team_id = g.team_id and c.id = g.client_id
    where g.user_id = of_user and c.standing <> 'left'
  ) found
  join team t on t.id = found.team_id
  order by found.rank, found.created_at
  limit 1
$$;
revoke all on function public.actor_of(uuid) from public;
grant execute on function public.actor_of(uuid) to plumbline_app;

-- Uses up one entry link, once. No row: unknown, used, out of date, or its person left.
create or replace function public.use_entry_link(of_token_hash text, at timestamptz)
returns table (team_id uuid, user_id uuid, client_id uuid, member_id uuid, guardian_id uuid, purpose text)
language sql volatile security definer set search_path = public as $$
  with used as (
    update entry_link set used_at = at
    where token_hash = of_token_hash and used_at is null and expires_at > at
    returning entry_link.*
  )
  select used.team_id, coalesce(c.user_id, m.user_id, g.user_id), used.client_id, used.member_id, used.guardian_id, used.purpose
  from used
  left join client c on c.team_id = used.team_id and c.id = used.client_id and c.standing <> 'left'
  left join member m on m.team_id = used.team_id and m.id = used.member_id and m.left_at is null
  left join guardian g on g.team_id = used.team_id and g.id = used.guardian_id
  where coalesce(c.user_id, m.user_id, g.user_id) is not null
$$;
revoke all on function public.use_entry_link(text, timestamptz) from public;
grant execute on function public.use_entry_link(text, timestamptz) to plumbline_app;

-- Clients who may be mailed a sign-in link at this address: they have come in before and have not left.
create or replace function public.clients_with_email(of_email text) returns table (team_id uuid, client_id uuid)
language sql stable security definer set search_path = public as $$
  select c.team_id, c.id from client c
  where lower(c.email) = lower(of_email) and c.user_id is not null and c.joined_at is not null and c.standing <> 'left'
$$;
revoke all on function public.clients_with_email(text) from public;
grant execute on function public.clients_with_email(text) to plumbline_app;

-- Parents and guardians who may be mailed a link at this address: they have opened one before, and their client has not left.
create or replace function public.guardians_with_email(of_email text) returns table (team_id uuid, guardian_id uuid)
language sql stable security definer set search_path = public as $$
  select g.team_id, g.id from guardian g join client c on c.team_id = g.team_id and c.id = g.client_id
  where lower(g.email) = lower(of_email) and g.user_id is not null and c.standing <> 'left'
    and exists (select from entry_link l where l.team_id = g.team_id and l.guardian_id = g.id and l.used_at is not null)
$$;
revoke all on function public.guardians_with_email(text) from public;
grant execute on function public.guardians_with_email(text) to plumbline_app;

-- ---- Notices: one browser tells one client, whoever signed in on it before ----

-- Frees the address of a browser that somebody else holds. The address is known to that browser and its push service alone.
create or replace function public.release_push_endpoint(of_endpoint text, for_client uuid) returns void
language sql volatile security definer set search_path = public as $$
  delete from push_subscription where endpoint = of_endpoint and client_id <> for_client
$$;
revoke all on function public.release_push_endpoint(text, uuid) from public;
grant execute on function public.release_push_endpoint(text, uuid) to plumbline_app;

-- ---- Members: the one look across teams before somebody belongs to one ----

-- The team of an invitation whose link works.
create or replace function public.invited_team(of_token_hash text, at timestamptz) returns table (team_id uuid)
language sql stable security definer set search_path = public as $$
  select i.team_id from member_invitation i
  where i.token_hash = of_token_hash and i.used_at is null and i.withdrawn_at is null and i.expires_at > at
$$;
revoke all on function public.invited_team(text, timestamptz) from public;
grant execute on function public.invited_team(text, timestamptz) to plumbline_app;

-- Changes of standing whose day has come where the client lives, and that were not made or taken back yet.
create or replace function public.due_standings(at timestamptz) returns table (team_id uuid, id uuid)
language sql stable security definer set search_path = public as $$
  select s.team_id, s.id from standing_change s join client c on c.team_id = s.team_id and c.id = s.client_id
  where s.applied_at is null and s.undone_at is null and s.from_date <= wall_clock(c.zone, at)::date
  order by s.from_date, s.created_at, s.id
$$;
revoke all on function public.due_standings(timestamptz) from public;
grant execute on function public.due_standings(timestamptz) to plumbline_app;

-- ---- Earlier answers: questions and their answers by the stems of words ----

-- Answers whose question and answer together fit `wanted`, best first. `any_word`: one that shares two words of `wanted`
-- fits (its only one, where it has but one); else all words have to be there, or what -, or and "quotes" say.
-- It looks as the owner because "@@" is not leakproof, so that under row-level security no index would answer it; it
-- sees the team that the transaction is set to, and that one only.
create or replace function public.earlier_answers(wanted text, any_word boolean, most integer)
returns table (answer_id uuid, rank real)
language sql stable security definer set search_path = public as $$
  with wish as materialized (
    select replace(plainto_tsquery('english', wanted)::text, ' & ', ' | ')::tsquery as touches,
      websearch_to_tsquery('english', wanted) as said,
      tsvector_to_array(to_tsvector('english', wanted)) as stems
  ), near as (
    select a.question_id from answer a
    where a.team_id = nullif(current_setting('app.team_id', true), '')::uuid
      and to_tsvector('english', a.text) @@ (select touches from wish)
    union
    select q.id from question q
    where q.team_id = nullif(current_setting('app.team_id', true), '')::uuid
      and to_tsvector('english', q.text) @@ (select touches from wish)
  ), told as (
    select a.id, a.created_at,
      setweight(to_tsvector('english', q.text), 'A') || setweight(to_tsvector('english', a.text), 'B') as words
    from near
    join question q on q.team_id = nullif(current_setting('app.team_id', true), '')::uuid and q.id = near.question_id
    join answer a on a.team_id = q.team_id and a.question_id = q.id
  )
  select told.id, ts_rank(told.words, case when any_word then wish.touches else wish.said end) as rank
  from told cross join wish
  where case when any_word
    then (select count(*) from unnest(tsvector_to_array(told.words)) stem where stem = any (wish.stems))
      >= least(2, cardinality(wish.stems))
    else told.words @@ wish.said end
  order by rank desc, told.created_at desc, told.id
  limit most
$$;
revoke all on function public.earlier_answers(text, boolean, integer) from public;
grant execute on function public.earlier_answers(text, boolean, integer) to plumbline_app;

-- ---- Morning mails: who wants one (called by the worker, across teams) ----

-- Members who have not left, with the newest local date for which a mail was written or left out.
create or replace function public.morning_members()
returns table (team_id uuid, member_id uuid, zone text, hour integer, decided_on date)
language sql stable security definer set search_path = public as $$
  select m.team_id, m.id, m.zone, m.morning_mail_hour,
    (select max(right(o.dedupe_key, 10))::date from outbox o
     where o.team_id = m.team_id and o.kind = 'morning' and o.sent_at is not null
       and starts_with(o.dedupe_key, m.id::text || ':'))
  from member m where m.left_at is null and m.morning_mail <> 'off'
  order by m.team_id, m.id
$$;
revoke all on function public.morning_members() from public;
grant execute on function public.morning_members() to plumbline_app;

-- Teams whose clips ask for something: one stands still on its way, is over its last day, or has none said yet.
create or replace function public.teams_with_clips() returns table (team_id uuid)
language sql stable security definer set search_path = public as $$
  select distinct k.team_id from clip k where k.state = 'arriving'
    or (k.state = 'ready' and k.looked_at is not null and k.pinned_at is null)
$$;
revoke all on function public.teams_with_clips() from public;
grant execute on function public.teams_with_clips() to plumbline_app;

-- ---- Plans, packed ----

-- A plan with its sessions and lines as one text, read by lib/db/history-plans.ts: JSON without names of fields. A night
-- reads some hundred lines for a client; built anew each time they were a quarter of the server's night.
create or replace function public.packed_plan(p public.plan) returns text
language sql stable set search_path = public as $$
  select json_build_array(p.version, p.from_date, p.until_date, p.sessions_per_week, p.by_id, p.why, p.notes,
    coalesce(p.easy_weeks, '{}'), coalesce(p.test_weeks, '{}'), coalesce(p.no_kit_weeks, '{}'), p.accepted_week_au,
    coalesce(p.skills_in_focus, '{}'),
    coalesce((select json_agg(json_build_array(s.label, s.rest_seconds, s.warm_up, coalesce(s.warm_up_minutes, 0), s.minutes)
        order by s.position, s.label)
      from plan_session s where s.team_id = p.team_id and s.plan_id = p.id), '[]'),
    coalesce((select json_agg(json_build_array(s.label, i.rung_id, i.side, i.sets, i.target, i.minutes, i.times_per_week,
        i.support, i.stop_rule, i.not_two_days_running, o.rung_id, i.no_kit_rung_id)
        order by s.position, s.label, i.position)
      from plan_session s join plan_item i on i.team_id = s.team_id and i.session_id = s.id
      left join plan_item o on o.team_id = i.team_id and o.id = i.paired_with_id
      where s.team_id = p.team_id and s.plan_id = p.id), '[]'))::text
$$;

-- Packs plans whose rows are all written. The application itself may not write to a plan: a version stays as it is.
create or replace function public.pack_plans(of_clients uuid[]) returns void
language sql security definer set search_path = public as $$
  update plan p set packed = packed_plan(p)
  where p.team_id = nullif(current_setting('app.team_id', true), '')::uuid and p.client_id = any (of_clients) and p.packed is null
$$;
revoke all on function public.pack_plans(uuid[]) from public;
grant execute on function public.pack_plans(uuid[]) to plumbline_app;

-- All of it but the names of skills stays as it was written: these follow a skill that is renamed.
create or replace function public.repack_plan() returns trigger
language plpgsql set search_path = public as $$
begin
  new.packed := packed_plan(new);
  return new;
end
$$;
create or replace trigger repack_plan before update of skills_in_focus on public.plan
  for each row when (old.packed is not null) execute function public.repack_plan();

-- Those of before there was packing.
update public.plan p set packed = packed_plan(p) where p.packed is null;

-- ---- Weeks ----

-- The Monday of a day's week.
create or replace function public.week_of(day date) returns date
language sql immutable as $$ select day - (extract(isodow from day)::int - 1) $$;

-- A day as lib/db/packed-facts.ts reads it out of a list of days: its date and its facts.
create or replace function public.packed_day(day date, facts text) returns text
language sql stable as $$ select '["' || day || '",' || facts || ']' $$;

-- Keeps week_rollup as day_rollup says, whoever writes that: after each statement the weeks of the days it touched anew.
create or replace function public.keep_weeks() returns trigger
language plpgsql set search_path = public as $$
begin
  -- One act at a time for a client: the statement below sees what the act before it committed, or would write without it.
  perform pg_advisory_xact_lock(hashtextextended(k.team_id::text || k.client_id, 31))
    from (select distinct team_id, client_id from changed order by 1, 2) k;
  insert into week_rollup (team_id, client_id, week, days)
    select r.team_id, r.client_id, k.week, string_agg(packed_day(r.date, r.facts), ',' order by r.date)
    from (select distinct team_id, client_id, week_of(date) as week from changed) k
    join day_rollup r on r.team_id = k.team_id and r.client_id = k.client_id and r.date >= k.week and r.date < k.week + 7
    group by r.team_id, r.client_id, k.week
    on conflict (team_id, client_id, week) do update set days = excluded.days;
  if tg_op = 'DELETE' then
    delete from week_rollup w
    using (select distinct team_id, client_id, week_of(date) as week from changed) k
    where w.team_id = k.team_id and w.client_id = k.client_id and w.week = k.week and not exists (
      select from day_rollup r where r.team_id = k.team_id and r.client_id = k.client_id and r.date >= k.week and r.date < k.week + 7
    );
  end if;
  return null;
end
$$;
create or replace trigger keep_weeks_of_new after insert on public.day_rollup
  referencing new table as changed for each statement execute function public.keep_weeks();
create or replace trigger keep_weeks_of_changed after update on public.day_rollup
  referencing new table as changed for each statement execute function public.keep_weeks();
create or replace trigger keep_weeks_of_gone after delete on public.day_rollup
  referencing old table as changed for each statement execute function public.keep_weeks();

-- Days of before there were weeks.
insert into public.week_rollup (team_id, client_id, week, days)
  select r.team_id, r.client_id, week_of(r.date), string_agg(packed_day(r.date, r.facts), ',' order by r.date)
  from public.day_rollup r where not exists (select from public.week_rollup) group by 1, 2, 3 order by 3;
