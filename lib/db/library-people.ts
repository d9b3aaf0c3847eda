import type { Side } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

type OnRung = { rungId: string; side: Side };
export type PersonOnLadder = { clientId: string; name: string; standsOn: OnRung[]; planned: OnRung[] };
type Row = { kind: 'stands' | 'planned'; clientId: string; name: string } & OnRung;

/** Clients who stand on a ladder now, or from a day that is set, and those with a rung of it in the plan on their phone or in one to come. Not those who left. */
export async function listPeopleOnLadder(tx: TeamPg, ladderId: string, now: Date): Promise<PersonOnLadder[]> {
  const { rows } = await tx.client.query<Row>(PEOPLE, [tx.teamId, ladderId, now]);
  const people = new Map<string, PersonOnLadder>();
  for (const { kind, clientId, name, rungId, side } of rows) {
    const person = people.get(clientId) ?? { clientId, name, standsOn: [], planned: [] };
    people.set(clientId, person);
    person[kind === 'stands' ? 'standsOn' : 'planned'].push({ rungId, side });
  }
  return [...people.values()];
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
  where p.team_id = $1 and p.ladder_id = $2 and not exists (
    select from placement later
    where later.team_id = $1 and later.client_id = p.client_id and later.ladder_id = $2
      and later.side in (p.side, 'both') and later.from_date > p.from_date and later.from_date <= c.today)
    and not (p.side = 'both' and (
      select count(distinct apart.side) from placement apart
      where apart.team_id = $1 and apart.client_id = p.client_id and apart.ladder_id = $2 and apart.side <> 'both'
        and apart.from_date > p.from_date and apart.from_date <= c.today) = 2)
  union
  select 'planned', c.id, c.name, r.id, i.side
  from person c join plan q on q.team_id = $1 and q.client_id = c.id
  join plan_session s on s.team_id = $1 and s.plan_id = q.id
  join plan_item i on i.team_id = $1 and i.session_id = s.id
  join rung r on r.team_id = $1 and r.id in (i.rung_id, i.no_kit_rung_id) and r.ladder_id = $2
  where not exists (
    select from plan newer where newer.team_id = $1 and newer.client_id = c.id and newer.version > q.version
      and newer.from_date <= c.today)
  order by name, "clientId", kind desc, "rungId", side`;
