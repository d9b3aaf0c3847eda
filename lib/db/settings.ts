import { DEFAULT_LIMITS, isLimitId, type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import type { TeamPg } from './client.ts';

/** The numbers in force for one client, what differs from the defaults, and the version that says so (0: nothing does). */
export type SettingsInForce = { version: number; changed: Partial<Limits>; limits: Limits };

const UNCHANGED: SettingsInForce = { version: 0, changed: {}, limits: DEFAULT_LIMITS };

/** What a team or a client changed, of the numbers that decide. */
export type Changed = Partial<Record<string, number>>;

type Row = { clientId: string | null; version: number; values: Changed };

/** The numbers in force for each client: defaults, the team's over them, the client's own over those. One query. */
export async function listSettings(tx: TeamPg, clientIds: readonly string[]): Promise<SettingsOf> {
  const { rows } = await tx.client.query<Row>(
    `select distinct on (client_id) client_id as "clientId", version, values from team_settings
     where team_id = $1 and (client_id is null or client_id = any($2::uuid[]))
     order by client_id, version desc`,
    [tx.teamId, clientIds],
  );
  return settingsOf(rows);
}

export type SettingsOf = { team: SettingsInForce; of: (clientId: string) => SettingsInForce };

function settingsOf(rows: readonly Row[]): SettingsOf {
  const teamRow = rows.find((row) => row.clientId === null);
  const team = teamRow ? inForce(teamRow.version, knownOnes(teamRow.values)) : UNCHANGED;
  const own = new Map(
    rows
      .filter((row) => row.clientId !== null)
      .map(({ clientId, version, values }) => [
        clientId,
        inForce(Math.max(team.version, version), { ...team.changed, ...knownOnes(values) }),
      ]),
  );
  return { team, of: (clientId) => own.get(clientId) ?? team };
}

function inForce(version: number, changed: Partial<Limits>): SettingsInForce {
  return { version, changed, limits: limitsWith(changed) };
}

/** A number that a later version of the rules does not know any more decides nothing. */
function knownOnes(values: Changed): Partial<Limits> {
  return Object.fromEntries(
    Object.entries(values).filter(([id, value]) => isLimitId(id) && Number.isFinite(value)),
  );
}

/** What stands in the newest settings of the team (`clientId` null) or of a client, with who changed it and when. */
export async function findChanged(tx: TeamPg, clientId: string | null): Promise<Changed> {
  const { rows } = await tx.client.query<{ values: Changed }>(
    `select values from team_settings where team_id = $1 and client_id is not distinct from $2::uuid
     order by version desc limit 1`,
    [tx.teamId, clientId],
  );
  return rows[0]?.values ?? {};
}

export type SettingsVersion = {
  version: number;
  clientId: string | null;
  clientName: string | null;
  values: Changed;
  by: string | null;
  why: string;
  at: Date;
};

/** Versions of the team's settings and of all clients', newest first. */
export async function listSettingsVersions(tx: TeamPg, limit: number): Promise<SettingsVersion[]> {
  const { rows } = await tx.client.query<SettingsVersion>(
    `select s.version, s.client_id as "clientId", c.name as "clientName", s.values, m.name as by, s.why, s.created_at as at
     from team_settings s
     left join client c on c.team_id = s.team_id and c.id = s.client_id
     left join member m on m.team_id = s.team_id and m.id = s.by_id
     where s.team_id = $1 order by s.version desc limit $2`,
    [tx.teamId, limit],
  );
  return rows;
}

/** Holds the team's settings until the transaction ends, and says which version is the newest. */
export async function lockSettings(tx: TeamPg): Promise<number> {
  await tx.client.query('select pg_advisory_xact_lock(hashtextextended($1, 23))', [tx.teamId]);
  const { rows } = await tx.client.query<{ newest: number }>(
    'select coalesce(max(version), 0)::int as newest from team_settings where team_id = $1',
    [tx.teamId],
  );
  return rows[0]?.newest ?? 0;
}

/** Keeps a new version: the whole of what is changed, not the difference. */
export async function insertSettings(
  tx: TeamPg,
  settings: { version: number; clientId: string | null; values: Changed; why: string },
  by: { memberId: string; at: Date },
): Promise<void> {
  await tx.client.query(
    `insert into team_settings (team_id, version, client_id, values, by_id, why, created_at)
     values ($1, $2, $3, $4, $5, $6, $7)`,
    [tx.teamId, settings.version, settings.clientId, settings.values, by.memberId, settings.why, by.at],
  );
}
