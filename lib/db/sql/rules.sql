-- Rules that Prisma's schema cannot say. Safe to run at every start.
create unique index if not exists reason_one_open on public.reason (team_id, client_id, kind, subject_key) where closed_at is null;
create unique index if not exists entry_link_live on public.entry_link (token_hash) where used_at is null;
create index if not exists outbox_waiting on public.outbox (team_id, created_at) where sent_at is null;
create index if not exists day_rollup_by_date on public.day_rollup (team_id, date);
create index if not exists night_client_by_date on public.night_client (team_id, local_date);
create index if not exists reason_event_by_night on public.reason_event (team_id, night) where night is not null;
-- The words of questions and answers by their stems, for earlier_answers().
create index if not exists question_stems on public.question using gin (to_tsvector('english', text));
create index if not exists answer_stems on public.answer using gin (to_tsvector('english', text));
create index if not exists answer_of_question on public.answer (team_id, question_id);
create index if not exists consent_of_client on public.consent (team_id, client_id);
create index if not exists consent_withdrawn on public.consent (team_id, client_id) where withdrawn_by is not null;
-- What points at a check-in, a set, a reason or a line of a plan: else each one deleted reads the team's whole table.
create index if not exists check_in_corrected on public.check_in (team_id, corrects_id) where corrects_id is not null;
create index if not exists coach_word_of_check_in on public.coach_word (team_id, check_in_id) where check_in_id is not null;
create index if not exists coach_word_of_set on public.coach_word (team_id, set_id) where set_id is not null;
create index if not exists seen_mark_of_check_in on public.seen_mark (team_id, check_in_id) where check_in_id is not null;
create index if not exists question_of_check_in on public.question (team_id, check_in_id) where check_in_id is not null;
create index if not exists clip_of_check_in on public.clip (team_id, check_in_id) where check_in_id is not null;
create index if not exists step_taken_of_reason on public.step_taken (team_id, reason_id) where reason_id is not null;
create index if not exists verdict_of_reason on public.verdict (team_id, reason_id);
create index if not exists plan_item_paired on public.plan_item (team_id, paired_with_id) where paired_with_id is not null;

do $$
declare
  r record;
begin
  for r in
    select * from (values
      ('pain_score', 'pain_score_0_10', 'value between 0 and 10'),
      ('check_in', 'check_in_effort_0_10', 'effort is null or effort between 0 and 10'),
      ('check_in', 'check_in_minutes', 'minutes is null or minutes between 0 and 1440'),
      ('check_in', 'check_in_kind', 'kind in (''training'', ''rest'')'),
      ('check_in_set', 'check_in_set_value', 'value is null or (value >= -1000 and value <= 36000)'),
      ('check_in_set', 'check_in_set_side', 'side in (''both'', ''left'', ''right'')'),
      ('client', 'client_standing', 'standing in (''invited'', ''starting'', ''in-training'', ''paused'', ''ending'', ''left'', ''back'')'),
      ('absence', 'absence_order', 'to_date is null or to_date >= from_date')
    ) as rule (table_name, rule_name, body)
  loop
    if not exists (select from pg_constraint where conname = r.rule_name) then
      execute format('alter table public.%I add constraint %I check (%s)', r.table_name, r.rule_name, r.body);
    end if;
  end loop;
end
$$;

-- The key of the ledger also says whether a night is done and how often it was tried: nights behind a client, and those
-- that are owed, are counted in the index alone. Prisma's schema has no word for it.
do $$
begin
  if (select indnatts from pg_index where indexrelid = 'public.night_client_pkey'::regclass) = 3 then
    alter table public.night_client drop constraint night_client_pkey,
      add constraint night_client_pkey primary key (team_id, client_id, local_date) include (done_at, attempts);
  end if;
end
$$;
