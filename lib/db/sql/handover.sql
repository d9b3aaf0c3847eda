-- ---- Links to a record that end. Safe to run at every start, after the walls. ----

-- Why a link opens nothing any more; null while it does. A consent taken back or a deletion asked for since it was made
-- ends it for good, also when that is taken back again.
create or replace function public.handover_link_end(link public.handover_link, of_client uuid, at timestamptz) returns text
language sql stable set search_path = public as $$
  select case
    when link.revoked_at is not null then 'ended'
    when exists (select from consent c where c.team_id = link.team_id and c.client_id = of_client
      and c.withdrawn_by is not null and c.withdrawn_at >= link.created_at) then 'consent'
    when exists (select from erasure_ask e where e.team_id = link.team_id and e.client_id = of_client
      and e.asked_at >= link.created_at) then 'deletion'
    when link.wrong_codes >= 5 then 'codes'
    when link.expires_at <= at then 'over'
  end
$$;

-- The one look across teams that somebody with a link makes. A code that does not fit is counted in the same statement, so
-- that any number of tries at once are five. Nobody where the link opens nothing, whatever the reason.
create or replace function public.try_handover_link(of_token_hash text, of_code_hash text, at timestamptz)
returns table (team_id uuid, link_id uuid, client_id uuid, fits boolean, tries_left integer)
language sql volatile security definer set search_path = public as $$
  update handover_link l set wrong_codes = l.wrong_codes + (l.code_hash <> of_code_hash)::integer
  from handover_pack p
  where l.token_hash = of_token_hash and p.team_id = l.team_id and p.id = l.pack_id
    and l.wrong_codes < 5 and handover_link_end(l, p.client_id, at) is null
  returning l.team_id, l.id, p.client_id, l.code_hash = of_code_hash, 5 - l.wrong_codes
$$;
revoke all on function public.try_handover_link(text, text, timestamptz) from public;
grant execute on function public.try_handover_link(text, text, timestamptz) to plumbline_app;
