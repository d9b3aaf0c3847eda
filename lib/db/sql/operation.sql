-- What operators and the page about nights look at. Counts, dates and times only.

-- What waits in the outbox over all teams, by kind.
create or replace function public.waiting_outbox(at timestamptz)
returns table (kind text, waiting integer, tried integer, oldest_seconds double precision)
language sql stable security definer set search_path = public as $$
  select o.kind, count(*)::int, (count(*) filter (where o.attempts > 0))::int,
    greatest(0, extract(epoch from at - min(o.created_at)))::double precision
  from outbox o where o.sent_at is null group by o.kind order by o.kind
$$;
revoke all on function public.waiting_outbox(timestamptz) from public;
grant execute on function public.waiting_outbox(timestamptz) to plumbline_app;

-- Nights of clients that were not finished when it was 06:00 where the client lives: owed still, or failed so often that
-- they wait for a person. `team` null: everybody.
create or replace function public.nights_unfinished_at_six(at timestamptz, cap integer, team uuid)
returns table (team_id uuid, local_date date, clients integer)
language sql stable security definer set search_path = public as $$
  select night.team_id, night.local_date, count(*)::int
  from (
    select o.team_id, o.client_id, o.local_date from owed_nights_of(at, cap, team, null) o
    union all
    select n.team_id, n.client_id, n.local_date from night_client n
    where n.done_at is null and n.attempts >= 5 and (team is null or n.team_id = team)
      and n.local_date > (at at time zone 'UTC')::date - cap - 1
  ) night
  join client c on c.team_id = night.team_id and c.id = night.client_id
  where c.standing = any (night_standings()) and wall_clock(c.zone, at) >= night.local_date + 1 + time '06:00'
  group by night.team_id, night.local_date
  order by night.local_date, night.team_id
$$;
revoke all on function public.nights_unfinished_at_six(timestamptz, integer, uuid) from public;
grant execute on function public.nights_unfinished_at_six(timestamptz, integer, uuid) to plumbline_app;
