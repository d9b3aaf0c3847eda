import { pool, type TeamPg } from './client.ts';

export type WaitingKind = { kind: string; waiting: number; tried: number; oldestSeconds: number };

/** What waits in the outbox over all teams. */
export async function listWaitingKinds(now: Date): Promise<WaitingKind[]> {
  const { rows } = await pool().query<WaitingKind>(
    'select kind, waiting, tried, oldest_seconds as "oldestSeconds" from waiting_outbox($1)',
    [now],
  );
  return rows;
}

export type OwedFigures = { nights: number; clients: number; oldest: string | null };

/** How many nights are owed over all teams. */
export async function countOwedNights(now: Date, cap: number): Promise<OwedFigures> {
  const { rows } = await pool().query<OwedFigures>(
    `select count(*)::int as nights, count(distinct client_id)::int as clients, min(local_date) as oldest
     from owed_nights($1, $2)`,
    [now, cap],
  );
  return rows[0] ?? { nights: 0, clients: 0, oldest: null };
}

/** Nights of clients, over all teams, that were not finished at 06:00 where the client lives. */
export async function countUnfinishedAtSix(now: Date, cap: number): Promise<number> {
  const { rows } = await pool().query<{ nights: number }>(
    'select coalesce(sum(clients), 0)::int as nights from nights_unfinished_at_six($1, $2, null)',
    [now, cap],
  );
  return rows[0]?.nights ?? 0;
}

export type UnfinishedNight = { localDate: string; clients: number };

/** The same of one team by their dates, oldest first. */
export async function listUnfinishedAtSix(tx: TeamPg, now: Date, cap: number): Promise<UnfinishedNight[]> {
  const { rows } = await tx.client.query<UnfinishedNight>(
    `select local_date as "localDate", clients from nights_unfinished_at_six($1, $2, $3)`,
    [now, cap, tx.teamId],
  );
  return rows;
}
