import type { HistoryLimit } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

type OnRung = { rungId: string; side: Side };
export type PersonOnLadder = {
  clientId: string;
  name: string;
  standsOn: OnRung[];
  planned: OnRung[];
  /** Whether their newest assessment asks about this ladder. */
  assessed: boolean;
  /** In force or to come. */
  limits: HistoryLimit[];
};
type Row = { clientId: string; name: string } & (
  | ({ kind: 'stands' | 'planned' } & OnRung)
  | { kind: 'assessed'; rungId: null; side: null }
);

/**
 * Clients who stand on a ladder now, or from a day that is set, those with a rung of it in the plan on their phone or in
 * one to come, and those whose newest assessment asks about it. Not those who left.
 */
export async function listPeopleOnLadder(tx: TeamPg, ladderId: string, now: Date): Promise<PersonOnLadder[]> {
  const { rows } = await tx.client.query<Row>(PEOPLE, [tx.teamId, ladderId, now]);
  const people = new Map<string, PersonOnLadder>();
  for (const { clientId, name, ...row } of rows) {
    const person = people.get(clientId) ?? {
      clientId,
      name,
      standsOn: [],
      planned: [],
      assessed: false,
      limits: [],
    };
    people.set(clientId, person);
    if (row.kind === 'assessed') person.assessed = true;
    else person[row.kind === 'stands' ? 'standsOn' : 'planned'].push({ rungId: row.rungId, side: row.side });
  }
  for (const { clientId, ...limit } of await listOpenLimits(tx, [...people.keys()], now))
    people.get(clientId)?.limits.push(limit);
  return [...people.values()];
}

async function listOpenLimits(
  tx: TeamPg,
  clientIds: readonly string[],
  now: Date,
): Promise<(HistoryLimit & { clientId: string })[]> {
  const { rows } = await tx.client.query<HistoryLimit & { clientId: string }>(
    `select x.client_id as "clientId", x.tissue, x.region, x.side, x.rule, x.percent, x.from_date as "from",
       x.until_date as until, x.who
     from limit_rule x join client c on c.team_id = x.team_id and c.id = x.client_id
     where x.team_id = $1 and x.client_id = any($2::uuid[])
       and (x.until_date is null or x.until_date >= ($3::timestamptz at time zone c.zone)::date)
     order by x.from_date, x.id`,
    [tx.teamId, clientIds, now],
  );
  return rows;
}

/** Rungs of a ladder that a set, a placement or a plan of anybody names, whenever. */
export async function listUsedRungs(tx: TeamPg, ladderId: string): Promise<Set<string>> {
  const { rows } = await tx.client.query<{ id: string }>(
    `select r.id from rung r where r.team_id = $1 and r.ladder_id = $2 and (
       exists (select from check_in_set x where x.team_id = r.team_id and x.rung_id = r.id)
       or exists (select from placement x where x.team_id = r.team_id and x.rung_id = r.id)
       or exists (select from plan_item x where x.team_id = r.team_id and x.rung_id = r.id))`,
    [tx.teamId, ladderId],
  );
  return new Set(rows.map((row) => row.id));
}

/** How many clients stand on each ladder of the team. */
export async function countPeopleByLadder(tx: TeamPg, now: Date): Promise<Map<string, number>> {
  const { rows } = await tx.client.query<{ ladderId: string; people: number }>(
    `select p.ladder_id as "ladderId", count(distinct p.client_id)::int as people
     from placement p join client c on c.team_id = p.team_id and c.id = p.client_id
     where p.team_id = $1 and c.standing <> 'left' and p.from_date <= ($2::timestamptz at time zone c.zone)::date
     group by p.ladder_id`,
    [tx.teamId, now],
  );
  return new Map(rows.map((row) => [row.ladderId, row.people]));
}

const PEOPLE = `
  with person as (
    select id, name, ($3::timestamptz at time zone zone)::date as today from client
    where team_id = $1 and standing <> 'left'
  )
  select 'stands' as kind, c.id as "clientId", c.name, p.rung_id as "rungId", p.side
  from placement p join person c on c.id = p.client_id
  where p.team_id = $1 and p.ladder_id = $2::uuid and not exists (
    select from placement later
    where later.team_id = $1 and later.client_id = p.client_id and later.ladder_id = $2::uuid
      and later.side in (p.side, 'both') and later.from_date > p.from_date and later.from_date <= c.today)
    and not (p.side = 'both' and (
      select count(distinct apart.side) from placement apart
      where apart.team_id = $1 and apart.client_id = p.client_id and apart.ladder_id = $2::uuid and apart.side <> 'both'
        and apart.from_date > p.from_date and apart.from_date <= c.today) = 2)
  union
  select 'planned', c.id, c.name, r.id, i.side
  from person c join plan q on q.team_id = $1 and q.client_id = c.id
  join plan_session s on s.team_id = $1 and s.plan_id = q.id
  join plan_item i on i.team_id = $1 and i.session_id = s.id
  join rung r on r.team_id = $1 and r.id in (i.rung_id, i.no_kit_rung_id) and r.ladder_id = $2::uuid
  where not exists (
    select from plan newer where newer.team_id = $1 and newer.client_id = c.id and newer.version > q.version
      and newer.from_date <= c.today)
  union
  select 'assessed', c.id, c.name, null, null
  from person c join lateral (
    select a.answers from assessment a where a.team_id = $1 and a.client_id = c.id
    order by a.created_at desc, a.id limit 1) newest on true
  where newest.answers->'parts' @> jsonb_build_array(jsonb_build_object('ladderId', $2::text))
  order by name, "clientId", kind desc, "rungId", side`;
