import { DEFAULT_LIMITS, isLimitId, type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import type { TeamPg } from './client.ts';

/** The numbers in force for one client, what differs from the defaults, and the version that says so (0: nothing does). */
export type SettingsInForce = { version: number; changed: Partial<Limits>; limits: Limits };

const UNCHANGED: SettingsInForce = { version: 0, changed: {}, limits: DEFAULT_LIMITS };

type Changed = Partial<Record<string, number>>;

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

export type SettingsOf = {
  team: SettingsInForce;
  of: (clientId: string) => SettingsInForce;
  /** What a client has of their own, over the team's. */
  ownOf: (clientId: string) => Partial<Limits>;
};

function settingsOf(rows: readonly Row[]): SettingsOf {
  const teamRow = rows.find((row) => row.clientId === null);
  const team = teamRow ? inForce(teamRow.version, knownOnes(teamRow.values)) : UNCHANGED;
  const own = new Map(
    rows
      .filter((row) => row.clientId !== null)
      .map(({ clientId, version, values }) => [clientId, { version, values: knownOnes(values) }]),
  );
  return {
    team,
    of: (clientId) => {
      const row = own.get(clientId);
      return row ? inForce(Math.max(team.version, row.version), { ...team.changed, ...row.values }) : team;
    },
    ownOf: (clientId) => own.get(clientId)?.values ?? {},
  };
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

/** What stands in the newest settings of the team (`clientId` null) or of a client, and their version; 0: none. */
export async function findChanged(
  tx: TeamPg,
  clientId: string | null,
): Promise<{ version: number; values: Partial<Limits> }> {
  const { rows } = await tx.client.query<{ version: number; values: Changed }>(
    `select version, values from team_settings where team_id = $1 and client_id is not distinct from $2::uuid
     order by version desc limit 1`,
    [tx.teamId, clientId],
  );
  const [row] = rows;
  return { version: row?.version ?? 0, values: row ? knownOnes(row.values) : {} };
}

/** Clients with numbers of their own, by name. */
export async function listOwnSettings(
  tx: TeamPg,
): Promise<{ clientId: string; name: string; values: Partial<Limits> }[]> {
  const { rows } = await tx.client.query<{ clientId: string; name: string; values: Changed }>(
    `select distinct on (c.name, c.id) c.id as "clientId", c.name, s.values from team_settings s
     join client c on c.team_id = s.team_id and c.id = s.client_id
     where s.team_id = $1 order by c.name, c.id, s.version desc`,
    [tx.teamId],
  );
  return rows.map((row) => ({ ...row, values: knownOnes(row.values) }));
}

export type SettingsVersion = {
  version: number;
  clientId: string | null;
  clientName: string | null;
  values: Partial<Limits>;
  by: string | null;
  why: string;
  at: Date;
};

/** Versions of the team's settings and of all clients', newest first. */
export async function listSettingsVersions(tx: TeamPg, limit: number): Promise<SettingsVersion[]> {
  const { rows } = await tx.client.query<Omit<SettingsVersion, 'values'> & { values: Changed }>(
    `select s.version, s.client_id as "clientId", c.name as "clientName", s.values, m.name as by, s.why, s.created_at as at
     from team_settings s
     left join client c on c.team_id = s.team_id and c.id = s.client_id
     left join member m on m.team_id = s.team_id and m.id = s.by_id
     where s.team_id = $1 order by s.version desc limit $2`,
    [tx.teamId, limit],
  );
  return rows.map((row) => ({ ...row, values: knownOnes(row.values) }));
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
  settings: { version: number; clientId: string | null; values: Partial<Limits>; why: string },
  by: { memberId: string; at: Date },
): Promise<void> {
  await tx.client.query(
    `insert into team_settings (team_id, version, client_id, values, by_id, why, created_at)
     values ($1, $2, $3, $4, $5, $6, $7)`,
    [tx.teamId, settings.version, settings.clientId, settings.values, by.memberId, settings.why, by.at],
  );
}
