import type { Standing } from '#lib/domain/vocabulary.ts';
import type { ReasonHold } from './acts.ts';
import type { TeamPg } from './client.ts';
import { pool } from './client.ts';

/** What a change did beside the standing itself, so that it can be taken back. */
export type StandingBehind = {
  leftAt?: string | null;
  /** Days off that it began. */
  absenceId?: string;
  /** Days off without an end that it ended. */
  ended?: string[];
  reasons?: ReasonHold[];
};
export type StandingChangeRow = {
  id: string;
  clientId: string;
  before: Standing;
  after: Standing;
  from: string;
  why: string;
  by: string;
  byId: string;
  behind: StandingBehind;
  createdAt: Date;
  appliedAt: Date | null;
};

const CHANGE = `select s.id, s.client_id as "clientId", s.before, s.after, s.from_date as "from", s.why, m.name as by,
    s.by_id as "byId", s.behind, s.created_at as "createdAt", s.applied_at as "appliedAt"
  from standing_change s join member m on m.team_id = s.team_id and m.id = s.by_id
  where s.team_id = $1 and s.undone_at is null`;

/** Changes of one client, newest first; those taken back are left out. */
export async function listStandingChanges(tx: TeamPg, clientId: string): Promise<StandingChangeRow[]> {
  const { rows } = await tx.client.query<StandingChangeRow>(
    `${CHANGE} and s.client_id = $2 order by s.created_at desc, s.id limit 50`,
    [tx.teamId, clientId],
  );
  return rows;
}

export async function findStandingChange(tx: TeamPg, id: string): Promise<StandingChangeRow | undefined> {
  const { rows } = await tx.client.query<StandingChangeRow>(`${CHANGE} and s.id = $2`, [tx.teamId, id]);
  return rows[0];
}

type NewChange = {
  clientId: string;
  byId: string;
  before: Standing;
  after: Standing;
  from: string;
  why: string;
  at: Date;
};

export async function insertStandingChange(tx: TeamPg, change: NewChange): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into standing_change (team_id, client_id, by_id, before, after, from_date, why, created_at)
     values ($1, $2, $3, $4, $5, $6, $7, $8) returning id`,
    [
      tx.teamId,
      change.clientId,
      change.byId,
      change.before,
      change.after,
      change.from,
      change.why,
      change.at,
    ],
  );
  return rows[0]?.id ?? '';
}

/** A change whose day has come: what it left behind is kept with it. */
export async function markStandingApplied(
  tx: TeamPg,
  id: string,
  applied: { behind: StandingBehind; before: Standing; at: Date },
): Promise<void> {
  await tx.client.query(
    'update standing_change set applied_at = $3, behind = $4, before = $5 where team_id = $1 and id = $2',
    [tx.teamId, id, applied.at, JSON.stringify(applied.behind), applied.before],
  );
}

export async function markStandingUndone(tx: TeamPg, id: string, at: Date): Promise<void> {
  await tx.client.query('update standing_change set undone_at = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    id,
    at,
  ]);
}

/** A newer word takes the place of one that was still to come. */
export async function dropPendingStandings(tx: TeamPg, clientId: string, at: Date): Promise<void> {
  await tx.client.query(
    `update standing_change set undone_at = $3
     where team_id = $1 and client_id = $2 and applied_at is null and undone_at is null`,
    [tx.teamId, clientId, at],
  );
}

export type StandingClient = {
  id: string;
  name: string;
  zone: string;
  standing: Standing;
  userId: string | null;
  leftAt: Date | null;
  joinedAt: Date | null;
  lastTrained: string | null;
};

/** The client, locked until the standing is changed. */
export async function lockStandingClient(tx: TeamPg, clientId: string): Promise<StandingClient | undefined> {
  const { rows } = await tx.client.query<StandingClient>(
    `select c.id, c.name, c.zone, c.standing, c.user_id as "userId", c.left_at as "leftAt", c.joined_at as "joinedAt",
       (select max(i.date) from check_in i where i.team_id = c.team_id and i.client_id = c.id and i.kind = 'training'
         and i.replaced_at is null and i.deleted_at is null) as "lastTrained"
     from client c where c.team_id = $1 and c.id = $2::uuid for update of c`,
    [tx.teamId, clientId],
  );
  return rows[0];
}

export async function setStanding(
  tx: TeamPg,
  clientId: string,
  to: { standing: Standing; leftAt: Date | string | null },
): Promise<void> {
  await tx.client.query(
    'update client set standing = $3, left_at = $4::timestamptz where team_id = $1 and id = $2',
    [tx.teamId, clientId, to.standing, to.leftAt],
  );
}

/** Days off from a day on, until somebody ends them; undefined where such days run already. */
export async function beginDaysOff(
  tx: TeamPg,
  off: { clientId: string; from: string; at: Date },
): Promise<string | undefined> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into absence (team_id, client_id, kind, from_date, to_date, said_at)
     select $1, $2, 'pause', $3::date, null, $4
     where not exists (select from absence where team_id = $1 and client_id = $2 and to_date is null and from_date <= $3::date)
     returning id`,
    [tx.teamId, off.clientId, off.from, off.at],
  );
  return rows[0]?.id;
}

/** Days off without an end stop with the day before; their ids. */
export async function endDaysOff(tx: TeamPg, clientId: string, before: string): Promise<string[]> {
  const { rows } = await tx.client.query<{ id: string }>(
    `update absence set to_date = greatest(from_date, $3::date - 1)
     where team_id = $1 and client_id = $2 and to_date is null and from_date <= $3::date returning id`,
    [tx.teamId, clientId, before],
  );
  return rows.map((row) => row.id);
}

export async function takeBackDaysOff(
  tx: TeamPg,
  off: { absenceId: string | undefined; ended: readonly string[] },
): Promise<void> {
  if (off.absenceId)
    await tx.client.query('delete from absence where team_id = $1 and id = $2', [tx.teamId, off.absenceId]);
  await tx.client.query('update absence set to_date = null where team_id = $1 and id = any($2::uuid[])', [
    tx.teamId,
    off.ended,
  ]);
}

/** Every reason of a client that is not closed, whatever its state. */
export async function listUnclosedReasonIds(tx: TeamPg, clientId: string): Promise<string[]> {
  const { rows } = await tx.client.query<{ id: string }>(
    'select id from reason where team_id = $1 and client_id = $2 and closed_at is null order by id',
    [tx.teamId, clientId],
  );
  return rows.map((row) => row.id);
}

export async function endSessionsOf(tx: TeamPg, userId: string): Promise<void> {
  await tx.client.query('delete from session where user_id = $1', [userId]);
}

/** Changes whose day has come, across teams: for the worker. */
export async function listDueStandings(at: Date): Promise<{ teamId: string; id: string }[]> {
  const { rows } = await pool().query<{ teamId: string; id: string }>(
    'select team_id as "teamId", id from due_standings($1)',
    [at],
  );
  return rows;
}
