-- ---- What happened stays as it happened; a person can still be forgotten. Safe to run at every start, after the walls. ----

-- The application's role adds to these and changes nothing; of plans only what the product itself has to change.
revoke update, delete, truncate on public.audit, public.reason_event, public.plan_session from plumbline_app;
revoke update, delete, truncate on public.plan_item, public.erasure, public.consent from plumbline_app;
revoke update, truncate on public.plan from plumbline_app;
-- A skill may be renamed under a plan, and a pyramid is tied after its lines are written.
grant update (skills_in_focus) on public.plan to plumbline_app;
grant update (paired_with_id) on public.plan_item to plumbline_app;
grant update (withdrawn_at, withdrawn_by) on public.consent to plumbline_app;
grant update (files_left) on public.erasure to plumbline_app;

-- The second fence, should somebody give a right back: only the owner (a migration, the deletion of a person) passes.
create or replace function public.keep_as_written() returns trigger
language plpgsql set search_path = public as $$
begin
  if current_user <> (select pg_get_userbyid(relowner) from pg_class where oid = tg_relid) then
    raise exception 'what stands in % is never changed', tg_table_name using errcode = 'insufficient_privilege';
  end if;
  return case when tg_op = 'DELETE' then old else new end;
end
$$;
create or replace trigger keep_as_written before update or delete on public.audit
  for each row execute function public.keep_as_written();
create or replace trigger keep_as_written before update or delete on public.reason_event
  for each row execute function public.keep_as_written();
create or replace trigger keep_as_written before delete on public.erasure
  for each row execute function public.keep_as_written();
create or replace trigger keep_as_written before delete on public.consent
  for each row execute function public.keep_as_written();
create or replace trigger keep_as_written before update or delete on public.plan_session
  for each row execute function public.keep_as_written();
create or replace trigger keep_as_written before delete on public.plan_item
  for each row execute function public.keep_as_written();

-- The one way back for a plan: its newest versions, as long as nobody trained by them (a step that is undone at once).
create or replace function public.keep_plans() returns trigger
language plpgsql set search_path = public as $$
begin
  if current_user = (select pg_get_userbyid(relowner) from pg_class where oid = tg_relid) then
    return null;
  end if;
  if exists (
    select from gone where exists (
      select from plan p where p.team_id = gone.team_id and p.client_id = gone.client_id and p.version > gone.version
    ) or exists (
      select from check_in c where c.team_id = gone.team_id and c.client_id = gone.client_id
        and c.plan_version = gone.version and c.deleted_at is null
    )
  ) then
    raise exception 'a plan that was trained by or followed is never deleted' using errcode = 'insufficient_privilege';
  end if;
  return null;
end
$$;
create or replace trigger keep_plans after delete on public.plan
  referencing old table as gone for each statement execute function public.keep_plans();

-- One line an hour for each person who looks at a record, however often they do.
create unique index if not exists audit_read_hourly on public.audit
  (team_id, client_id, actor_user_id, (date_trunc('hour', at at time zone 'UTC'))) where action = 'record-read';

-- ---- Deletion of a person ----

-- Deletes everything of one client in the team that the transaction is set to, and writes the line of the erase list.
-- Rows that name the client elsewhere lose the name; the audit keeps the id. Repeated: does nothing and says so (false).
-- Files are named in the line (files_left); whoever calls removes them after the transaction.
create or replace function public.erase_client(of_client uuid, of_receipt text, of_origin text, asked timestamptz, at timestamptz)
returns boolean
language plpgsql volatile security definer set search_path = public as $$
declare
  team uuid := nullif(current_setting('app.team_id', true), '')::uuid;
  who record;
  waiting text[];
  name_of text;
  done boolean;
  gone bigint;
  counts jsonb := '{}';
  keys text[] := '{}';
  more text[];
  users uuid[];
begin
  select * into who from client where team_id = team and id = of_client for update;
  if not found then
    return false;
  end if;
  users := array(select who.user_id where who.user_id is not null
    union select g.user_id from guardian g where g.team_id = team and g.client_id = of_client and g.user_id is not null);
  -- Files of the client, whichever table names them.
  for name_of in
    select k.table_name from information_schema.columns k
    join information_schema.columns c on c.table_schema = k.table_schema and c.table_name = k.table_name and c.column_name = 'client_id'
    where k.table_schema = 'public' and k.column_name = 'storage_key'
  loop
    execute format('select array(select storage_key from public.%I where team_id = $1 and client_id = $2 and storage_key is not null)', name_of)
      into more using team, of_client;
    keys := keys || more;
  end loop;
  -- What goes with its parent is counted before.
  counts := jsonb_build_object(
    'answer', (select count(*) from answer a join question q on q.team_id = a.team_id and q.id = a.question_id
      where q.team_id = team and q.client_id = of_client),
    'plan_item', (select count(*) from plan_item i join plan_session s on s.team_id = i.team_id and s.id = i.session_id
      join plan p on p.team_id = s.team_id and p.id = s.plan_id where p.team_id = team and p.client_id = of_client),
    'reason_event', (select count(*) from reason_event e join reason r on r.team_id = e.team_id and r.id = e.reason_id
      where r.team_id = team and r.client_id = of_client)
  );
  update check_in set corrects_id = null where team_id = team and client_id = of_client and corrects_id is not null;
  update plan_item i set paired_with_id = null from plan_session s join plan p on p.team_id = s.team_id and p.id = s.plan_id
    where i.team_id = team and s.team_id = team and s.id = i.session_id and p.client_id = of_client and i.paired_with_id is not null;
  -- Every table that knows clients, in whatever order their references allow: a new table needs no line here.
  waiting := array(
    select c.table_name::text from information_schema.columns c
    join information_schema.columns t on t.table_schema = c.table_schema and t.table_name = c.table_name and t.column_name = 'team_id'
    join information_schema.tables b on b.table_schema = c.table_schema and b.table_name = c.table_name and b.table_type = 'BASE TABLE'
    where c.table_schema = 'public' and c.column_name = 'client_id' and c.table_name not in ('audit', 'erasure')
    order by c.table_name
  );
  while cardinality(waiting) > 0 loop
    done := false;
    foreach name_of in array waiting loop
      begin
        execute format('delete from public.%I where team_id = $1 and client_id = $2', name_of) using team, of_client;
        get diagnostics gone = row_count;
        if gone > 0 then
          counts := counts || jsonb_build_object(name_of, gone);
        end if;
        waiting := array_remove(waiting, name_of);
        done := true;
      exception when foreign_key_violation or restrict_violation then
        null; -- something that is still to go points at it
      end;
    end loop;
    if not done then
      raise exception 'nothing of the client was deleted: % hold each other', waiting;
    end if;
  end loop;
  delete from client where team_id = team and id = of_client;
  counts := counts || jsonb_build_object('client', 1);
  -- Mails to members (mornings) name clients in their text.
  update outbox set body = body
    || jsonb_build_object('text', replace(body->>'text', who.name, 'a deleted client'))
    || jsonb_build_object('subject', replace(coalesce(body->>'subject', ''), who.name, 'a deleted client'))
    where team_id = team and client_id is null and body->>'text' is not null and who.name <> ''
      and (strpos(body->>'text', who.name) > 0 or strpos(coalesce(body->>'subject', ''), who.name) > 0);
  update audit set from_address = null where team_id = team and client_id = of_client and from_address is not null;
  delete from rate_limit r using unnest(users) as u(id) where r.key like '%|' || u.id::text;
  delete from verification v using "user" u where u.id = any (users)
    and (v.identifier = u.email or position(u.id::text in v.identifier || v.value) > 0);
  delete from "user" u where u.id = any (users)
    and not exists (select from member m where m.user_id = u.id)
    and not exists (select from client c where c.user_id = u.id)
    and not exists (select from guardian g where g.user_id = u.id);
  insert into erasure (team_id, client_id, receipt, origin, asked_at, erased_at, rows, files, files_left)
    values (team, of_client, of_receipt, of_origin, asked, at, counts, cardinality(keys), keys)
    on conflict (team_id, client_id) do update set files_left = array(select unnest(erasure.files_left) union select unnest(excluded.files_left));
  return true;
end
$$;
revoke all on function public.erase_client(uuid, text, text, timestamptz, timestamptz) from public;
grant execute on function public.erase_client(uuid, text, text, timestamptz, timestamptz) to plumbline_app;

-- Wishes whose days are over (called by the worker, across teams).
create or replace function public.due_erasures(at timestamptz)
returns table (team_id uuid, client_id uuid, receipt text, origin text, asked_at timestamptz)
language sql stable security definer set search_path = public as $$
  select a.team_id, a.client_id, a.receipt, a.origin, a.asked_at from erasure_ask a
  where a.taken_back_at is null and a.due_at <= at order by a.due_at, a.id
$$;
revoke all on function public.due_erasures(timestamptz) from public;
grant execute on function public.due_erasures(timestamptz) to plumbline_app;

-- The whole erase list, ids only, and with each line the files that still lie there.
create or replace function public.erase_list()
returns table (team_id uuid, client_id uuid, receipt text, origin text, asked_at timestamptz, erased_at timestamptz, files_left text[])
language sql stable security definer set search_path = public as $$
  select e.team_id, e.client_id, e.receipt, e.origin, e.asked_at, e.erased_at, e.files_left from erasure e order by e.erased_at, e.id
$$;
revoke all on function public.erase_list() from public;
grant execute on function public.erase_list() to plumbline_app;

-- What a receipt says, to whoever holds its number: no name, no team.
create or replace function public.receipt_of(number text)
returns table (asked_at timestamptz, due_at timestamptz, taken_back_at timestamptz, erased_at timestamptz, rows jsonb, files integer, files_left integer)
language sql stable security definer set search_path = public as $$
  select e.asked_at, null::timestamptz, null::timestamptz, e.erased_at, e.rows, e.files, cardinality(e.files_left)
  from erasure e where e.receipt = number
  union all
  select a.asked_at, a.due_at, a.taken_back_at, null, null, null, null from erasure_ask a where a.receipt = number
  limit 1
$$;
revoke all on function public.receipt_of(text) from public;
grant execute on function public.receipt_of(text) to plumbline_app;

-- Teams whose old records are to be deleted by themselves.
create or replace function public.teams_with_retention() returns table (team_id uuid)
language sql stable security definer set search_path = public as $$
  select t.id from team t where t.retention_erases order by t.id
$$;
revoke all on function public.teams_with_retention() from public;
grant execute on function public.teams_with_retention() to plumbline_app;
