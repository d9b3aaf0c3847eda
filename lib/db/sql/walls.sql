-- The walls between teams. Safe to run at every start, after the migrations.
-- The application's role owns no table and cannot bypass row-level security.
do $$
declare
  t record;
begin
  if not exists (select from pg_roles where rolname = 'plumbline_app') then
    create role plumbline_app login nosuperuser nocreatedb nocreaterole nobypassrls;
  end if;
  execute 'grant usage on schema public to plumbline_app';
  for t in
    select c.table_name, bool_or(c.column_name = 'team_id') as of_team
    from information_schema.columns c
    join information_schema.tables x using (table_schema, table_name)
    where c.table_schema = 'public' and x.table_type = 'BASE TABLE' and c.table_name <> '_prisma_migrations'
    group by c.table_name
  loop
    execute format('grant select, insert, update, delete on public.%I to plumbline_app', t.table_name);
    if t.of_team or t.table_name = 'team' then
      execute format('alter table public.%I enable row level security', t.table_name);
      execute format('alter table public.%I force row level security', t.table_name);
      execute format('drop policy if exists own_team on public.%I', t.table_name);
      execute format(
        'create policy own_team on public.%I for all to plumbline_app
           using (%I = nullif(current_setting(''app.team_id'', true), '''')::uuid)
           with check (%I = nullif(current_setting(''app.team_id'', true), '''')::uuid)',
        t.table_name,
        case when t.of_team then 'team_id' else 'id' end,
        case when t.of_team then 'team_id' else 'id' end
      );
      -- The owner migrates, dumps and runs the definer functions: it sees all.
      execute format('drop policy if exists owner_all on public.%I', t.table_name);
      execute format('create policy owner_all on public.%I for all to %I using (true) with check (true)', t.table_name, current_user);
    end if;
  end loop;
end
$$;

-- What happened stays as it happened.
revoke update, delete, truncate on public.audit from plumbline_app;
revoke update, delete, truncate on public.reason_event from plumbline_app;

-- The queue keeps its tables beside the data, in a schema of the application's role.
create schema if not exists bullmq authorization plumbline_app;
