import type { TeamPg } from './client.ts';

type Absence = { id: string; clientId: string; kind: string; from: string; to: string | null; saidAt: Date };

/** Keeps an absence once: the same id again changes nothing. Returns whether it is this client's. */
export async function insertAbsence(tx: TeamPg, absence: Absence): Promise<boolean> {
  const { id, clientId, kind, from, to, saidAt } = absence;
  await tx.client.query(
    `insert into absence (team_id, id, client_id, kind, from_date, to_date, said_at) values ($1, $2, $3, $4, $5, $6, $7)
     on conflict (team_id, id) do nothing`,
    [tx.teamId, id, clientId, kind, from, to, saidAt],
  );
  const { rows } = await tx.client.query<{ same: boolean }>(
    `select client_id = $3 and kind = $4 and from_date = $5
       and (to_date is not distinct from $6 or $6::date is null) as same
     from absence where team_id = $1 and id = $2`,
    [tx.teamId, id, clientId, kind, from, to],
  );
  return rows[0]?.same === true;
}

/** Training ends an absence whose last day was left open: the day before was its last, or its own first day. */
export async function endOpenAbsences(tx: TeamPg, clientId: string, date: string): Promise<void> {
  await tx.client.query(
    `update absence set to_date = greatest(from_date, $3::date - 1)
     where team_id = $1 and client_id = $2 and to_date is null and from_date <= $3::date`,
    [tx.teamId, clientId, date],
  );
}
