import { pool, type TeamPg, type TeamScope, teamScope } from './client.ts';

export type Retention = {
  years: number;
  erases: boolean;
  /** Days for which a film is kept after a look at it. */
  clipDays: number;
};

export async function findRetention(tx: TeamPg): Promise<Retention> {
  const { rows } = await tx.client.query<Retention>(
    'select retention_years as years, retention_erases as erases, clip_keep_days as "clipDays" from team where id = $1',
    [tx.teamId],
  );
  const [row] = rows;
  if (!row) throw new Error('a scope is of a team that is there');
  return row;
}

export async function setRetention(
  tx: TeamPg,
  { years, erases }: Omit<Retention, 'clipDays'>,
): Promise<void> {
  await tx.client.query('update team set retention_years = $2, retention_erases = $3 where id = $1', [
    tx.teamId,
    years,
    erases,
  ]);
}

export async function listTeamsWithRetention(): Promise<TeamScope[]> {
  const { rows } = await pool().query<{ teamId: string }>(
    'select team_id as "teamId" from teams_with_retention()',
  );
  return rows.map((row) => teamScope(row.teamId));
}

export type AgedRecord = {
  clientId: string;
  name: string;
  email: string | null;
  leftAt: Date;
  /** The day from which the record may go. */
  keptUntil: Date;
  /** A deletion that is announced already. */
  dueAt: Date | null;
};

/**
 * Clients who left, with the day their years are over: counted from leaving, or from the end of the year in which they
 * turned 18 where that is later. Who left under 18 without a year of birth is kept until somebody decides. `within`:
 * only those whose day comes in this many days. `quiet`: also leaves out whom the lead kept on in the last year.
 */
export async function listAgedRecords(
  tx: TeamPg,
  ask: { years: number; at: Date; within: number; quiet: boolean },
): Promise<AgedRecord[]> {
  const { rows } = await tx.client.query<AgedRecord>(
    `with aged as (
       select c.id, c.name, c.email, c.left_at,
         greatest(c.left_at, make_timestamptz(coalesce(c.birth_year, 1900) + 19, 1, 1, 0, 0, 0, 'UTC'))
           + make_interval(years => $2) as until
       from client c
       where c.team_id = $1 and c.standing = 'left' and c.left_at is not null and (not c.under18 or c.birth_year is not null)
     )
     select a.id as "clientId", a.name, a.email, a.left_at as "leftAt", a.until as "keptUntil", k.due_at as "dueAt"
     from aged a
     left join lateral (select due_at from erasure_ask k where k.team_id = $1 and k.client_id = a.id
       and k.taken_back_at is null order by due_at limit 1) k on true
     where a.until <= $3::timestamptz + make_interval(days => $4)
       and (not $5 or not exists (select from erasure_ask k where k.team_id = $1 and k.client_id = a.id
         and k.origin = 'retention' and k.taken_back_at > $3::timestamptz - interval '1 year'))
     order by a.until, a.name, a.id limit 500`,
    [tx.teamId, ask.years, ask.at, ask.within, ask.quiet],
  );
  return rows;
}

export async function listLeadEmails(tx: TeamPg): Promise<string[]> {
  const { rows } = await tx.client.query<{ email: string }>(
    `select email from member where team_id = $1 and role = 'lead' and left_at is null order by email`,
    [tx.teamId],
  );
  return rows.map((row) => row.email);
}
