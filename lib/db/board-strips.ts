import type { StripDay, StripDays } from '#lib/views/strip.ts';
import type { TeamPg } from './client.ts';

type Day = [date: string, state: string, load: number | null, pain: number | null];
type Row = { clientId: string; days: Day[] };
type Placed = { clientId: string; ladderId: string; side: string; from: string; position: number };
type Away = { clientId: string; from: string; to: string | null };

/** What the strips of these clients are drawn from: days `from`..`to`, absences in them, steps on ladders. */
export async function listStrips(
  tx: TeamPg,
  clientIds: string[],
  span: { from: string; to: string },
): Promise<Map<string, StripDays>> {
  const strips = new Map<string, StripDays>(
    clientIds.map((id) => [id, { days: [], absences: [], placements: [] }]),
  );
  if (clientIds.length === 0) return strips;
  for (const row of await listDays(tx, clientIds, span)) strips.get(row.clientId)?.days.push(...toDays(row));
  for (const { clientId, ...absence } of await listAway(tx, clientIds, span)) {
    strips.get(clientId)?.absences.push(absence);
  }
  for (const { clientId, ...placement } of await listPlaced(tx, clientIds, span.to)) {
    strips.get(clientId)?.placements.push(placement);
  }
  return strips;
}

function toDays(row: Row): StripDay[] {
  return row.days.map(([date, state, load, pain]) => ({ date, state, load, pain }));
}

async function listDays(tx: TeamPg, clientIds: string[], span: { from: string; to: string }): Promise<Row[]> {
  const { rows } = await tx.client.query<Row>(
    // One value a client: JSON is parsed several times faster than arrays of the database are.
    `select client_id as "clientId",
       json_agg(json_build_array(to_char(date, 'YYYY-MM-DD'), state, session_load_au, worst_pain) order by date) as days
     from day_rollup
     where team_id = $1 and client_id = any($2::uuid[]) and date between $3 and $4
     group by client_id`,
    [tx.teamId, clientIds, span.from, span.to],
  );
  return rows;
}

async function listAway(
  tx: TeamPg,
  clientIds: string[],
  span: { from: string; to: string },
): Promise<Away[]> {
  const { rows } = await tx.client.query<Away>(
    `select client_id as "clientId", from_date as "from", to_date as "to" from absence
     where team_id = $1 and client_id = any($2::uuid[]) and from_date <= $4 and (to_date is null or to_date >= $3)`,
    [tx.teamId, clientIds, span.from, span.to],
  );
  return rows;
}

async function listPlaced(tx: TeamPg, clientIds: string[], until: string): Promise<Placed[]> {
  const { rows } = await tx.client.query<Placed>(
    `select p.client_id as "clientId", p.ladder_id as "ladderId", p.side, p.from_date as "from", r.position
     from placement p join rung r on r.team_id = p.team_id and r.id = p.rung_id
     where p.team_id = $1 and p.client_id = any($2::uuid[]) and p.from_date <= $3
     order by p.client_id, p.from_date, p.created_at`,
    [tx.teamId, clientIds, until],
  );
  return rows;
}
