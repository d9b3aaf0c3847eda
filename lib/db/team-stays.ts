import type { Stay } from '#lib/checks/usual-time-here.ts';
import type { TeamPg } from './client.ts';

/**
 * The stays of all clients of the team on these rungs as they stood on the evening of `asOf`, in one query: from a
 * placement on a rung to the next one on another rung of that ladder and side. Placements after that evening are not
 * read; who left is counted to the day of leaving. Sides that moved together are one stay.
 */
export async function listTeamStays(
  tx: TeamPg,
  rungIds: string[],
  asOf: string,
): Promise<Map<string, Stay[]>> {
  const { rows } = await tx.client.query<{ rungId: string; stays: Stay[] }>(STAYS, [
    tx.teamId,
    rungIds,
    asOf,
  ]);
  return new Map(rows.map(({ rungId, stays }) => [rungId, stays]));
}

/** Every rung on which somebody of the team stands or stood. */
export async function listPlacedRungs(tx: TeamPg): Promise<string[]> {
  const { rows } = await tx.client.query<{ id: string }>(
    'select distinct rung_id as id from placement where team_id = $1',
    [tx.teamId],
  );
  return rows.map(({ id }) => id);
}

const STAYS = `
  with placed as (
    select distinct on (p.client_id, p.ladder_id, s.side, p.from_date)
      p.client_id, p.ladder_id, s.side, p.from_date, p.rung_id, r.position
    from placement p join rung r on r.team_id = p.team_id and r.id = p.rung_id
      cross join unnest(case p.side when 'both' then '{left,right}'::text[] else array[p.side] end) as s(side)
    where p.team_id = $1 and p.from_date <= $3::date
      and p.ladder_id in (select ladder_id from rung where team_id = $1 and id = any($2::uuid[]))
    order by p.client_id, p.ladder_id, s.side, p.from_date, p.side = 'both'
  ), moved as (
    select *, lag(rung_id) over path is distinct from rung_id as is_move from placed
    window path as (partition by client_id, ladder_id, side order by from_date)
  ), stay as (
    select client_id, rung_id, from_date, position,
      lead(from_date) over path as next_date, lead(position) over path as next_position
    from moved where is_move
    window path as (partition by client_id, ladder_id, side order by from_date)
  ), counted as (
    select distinct stay.client_id, rung_id, from_date,
      coalesce(next_date, least($3::date, (c.left_at at time zone c.zone)::date)) - from_date as days,
      coalesce(next_position > position, false) as passed
    from stay join client c on c.team_id = $1 and c.id = stay.client_id
    where rung_id = any($2::uuid[])
  )
  select rung_id as "rungId", json_agg(json_build_object('clientId', client_id, 'days', greatest(days, 0), 'passed', passed)
    order by client_id, from_date, days, passed) as stays
  from counted group by rung_id`;
