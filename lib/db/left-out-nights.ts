import { pool, type TeamPg, type TeamScope, teamScope } from './client.ts';
import { NIGHTS_BACK } from './ledger.ts';

export type LeftOut = { clientId: string; fromDate: string; toDate: string; nights: number };

/** Nights that are too long ago to be caught up and that nobody was told of yet, by team. */
export async function listLeftOutNights(now: Date): Promise<{ scope: TeamScope; leftOut: LeftOut[] }[]> {
  const { rows } = await pool().query<LeftOut & { teamId: string }>(
    `select team_id as "teamId", client_id as "clientId", from_date as "fromDate", to_date as "toDate", nights
     from left_out_nights($1, $2)`,
    [now, NIGHTS_BACK],
  );
  const byTeam = new Map<string, LeftOut[]>();
  for (const { teamId, ...row } of rows) byTeam.set(teamId, [...(byTeam.get(teamId) ?? []), row]);
  return [...byTeam].map(([teamId, leftOut]) => ({ scope: teamScope(teamId), leftOut }));
}

/** Writes them down. Two workers at once write them once. */
export async function insertLeftOutNights(tx: TeamPg, leftOut: LeftOut[], at: Date): Promise<void> {
  await tx.client.query(
    `insert into night_left_out (team_id, client_id, from_date, to_date, nights, said_at)
     select $1, id, from_date, to_date, nights, $6
     from unnest($2::uuid[], $3::date[], $4::date[], $5::int[]) as each(id, from_date, to_date, nights)
     on conflict (team_id, client_id, from_date) do nothing`,
    [
      tx.teamId,
      leftOut.map((each) => each.clientId),
      leftOut.map((each) => each.fromDate),
      leftOut.map((each) => each.toDate),
      leftOut.map((each) => each.nights),
      at,
    ],
  );
}

export type LeftOutSpan = { from: string; to: string; nights: number; clients: number };

/** What was left out in spans that end between two dates (null: without end), newest first; equal spans as one. */
export async function listLeftOutSpans(
  tx: TeamPg,
  page: { from: string | null; before: string | null },
): Promise<LeftOutSpan[]> {
  const { rows } = await tx.client.query<LeftOutSpan>(
    `select from_date as "from", to_date as "to", nights, count(*)::int as clients from night_left_out
     where team_id = $1 and ($2::date is null or to_date >= $2::date) and ($3::date is null or to_date < $3::date)
     group by from_date, to_date, nights order by to_date desc, from_date desc, nights desc`,
    [tx.teamId, page.from, page.before],
  );
  return rows;
}
