import type { OwnLibrary } from '#lib/handover/take-in/match-ladders.ts';
import type { TeamPg } from './client.ts';

const LIBRARY = ['skill', 'part', 'ladder', 'drill', 'rung'] as const;

/** The team's own ladders, as rows of a record. */
export async function readOwnLibrary(tx: TeamPg): Promise<OwnLibrary> {
  const { rows } = await tx.client.query<OwnLibrary>(
    `select ${LIBRARY.map(
      (table) =>
        `(select coalesce(jsonb_agg(to_jsonb(x) order by x.id), '[]') from ${table} x where x.team_id = $1) as ${table}`,
    ).join(', ')}`,
    [tx.teamId],
  );
  return rows[0] ?? { skill: [], part: [], ladder: [], drill: [], rung: [] };
}

const PLAIN = /^[a-z][a-z0-9_]*$/;

/** Keeps rows as they are, in one statement: they may point at each other. Names of columns come from our own schema. */
export async function insertRows(
  tx: TeamPg,
  table: string,
  rows: readonly Readonly<Record<string, unknown>>[],
): Promise<void> {
  const [first] = rows;
  if (!first) return;
  const columns = Object.keys(first);
  if (![table, ...columns].every((name) => PLAIN.test(name))) throw new Error('not the name of a column');
  await tx.client.query(
    `insert into ${table} (team_id, ${columns.map((name) => `"${name}"`).join(', ')})
     select $1::uuid, ${columns.map((name) => `r."${name}"`).join(', ')} from jsonb_populate_recordset(null::${table}, $2::jsonb) r`,
    [tx.teamId, JSON.stringify(rows)],
  );
}

/** The same for supports: one that the team has stays as the team has it. */
export async function insertMissingSupports(
  tx: TeamPg,
  rows: readonly Readonly<Record<string, unknown>>[],
): Promise<void> {
  await tx.client.query(
    `insert into support_profile (team_id, key, name, wrist_back_factor, wrist_forward_factor, add, results_count)
     select $1::uuid, r.key, r.name, r.wrist_back_factor, r.wrist_forward_factor, r.add, r.results_count
     from jsonb_populate_recordset(null::support_profile, $2::jsonb) r on conflict (team_id, key) do nothing`,
    [tx.teamId, JSON.stringify(rows)],
  );
}

/** People who are named in a pack, by name, as far as they are kept from an earlier pack of that team. */
export async function findBroughtMembers(
  tx: TeamPg,
  team: string,
  names: readonly string[],
): Promise<Map<string, string>> {
  const { rows } = await tx.client.query<{ id: string; name: string }>(
    'select id, name from member where team_id = $1 and brought_from = $2 and name = any($3)',
    [tx.teamId, team, names],
  );
  return new Map(rows.map(({ id, name }) => [name, id]));
}

/** Somebody who is named in a pack: nobody who can sign in, and not of this team. */
export async function insertBroughtMember(
  tx: TeamPg,
  person: { id: string; userId: string; name: string; team: string; at: Date },
): Promise<void> {
  const { id, userId, name, team, at } = person;
  await tx.client.query(
    `insert into member (team_id, id, user_id, role, name, email, zone, left_at, created_at, morning_mail, brought_from)
     values ($1, $2, $3, 'coach', $4, '', 'UTC', $5, $5, 'off', $6)`,
    [tx.teamId, id, userId, name, at, team],
  );
}

export type Taken = { clientId: string; client: string; by: string; at: Date };

/** When this client of another team was taken in before; also where the client is this team's own. */
export async function findTaken(tx: TeamPg, sourceClientId: string): Promise<Taken | undefined> {
  const { rows } = await tx.client.query<Taken>(
    `select t.client_id as "clientId", c.name as client, m.name as by, t.at from taken_in t
     join client c on c.team_id = t.team_id and c.id = t.client_id
     join member m on m.team_id = t.team_id and m.id = t.by_id
     where t.team_id = $1 and t.source_client_id = $2
     union all
     select c.id, c.name, m.name, c.created_at from client c
     join member m on m.team_id = c.team_id and m.id = c.coach_id where c.team_id = $1 and c.id = $2
     limit 1`,
    [tx.teamId, sourceClientId],
  );
  return rows[0];
}

/** One at a time in a team, so that the same pack twice at once is twice and not at once. */
export async function lockTakingIn(tx: TeamPg): Promise<void> {
  await tx.client.query('select pg_advisory_xact_lock(hashtextextended($1, 29))', [tx.teamId]);
}

export async function insertTaken(
  tx: TeamPg,
  taken: {
    clientId: string;
    byId: string;
    sourceClientId: string;
    sourceTeam: string;
    manifestSha256: string;
    rows: Readonly<Record<string, number>>;
    at: Date;
  },
): Promise<void> {
  await tx.client.query(
    `insert into taken_in (team_id, client_id, by_id, source_client_id, source_team, manifest_sha256, rows, at)
     values ($1, $2, $3, $4, $5, $6, $7, $8)`,
    [
      tx.teamId,
      taken.clientId,
      taken.byId,
      taken.sourceClientId,
      taken.sourceTeam,
      taken.manifestSha256,
      JSON.stringify(taken.rows),
      taken.at,
    ],
  );
}

/** Runs `work`, tells what it gave, and takes everything back that it wrote. */
export async function tryOut<T>(tx: TeamPg, work: () => Promise<T>): Promise<T> {
  await tx.client.query('savepoint trial');
  try {
    return await work();
  } finally {
    await tx.client.query('rollback to savepoint trial');
  }
}

export type CameFrom = {
  team: string;
  by: string;
  at: Date;
  consents: { kind: string; toTeam: string; givenAt: Date; givenBy: string; withdrawnAt: Date | null }[];
};

/** Which team a client came from, who took them in, and the consents that were given there; undefined: none. */
export async function findCameFrom(tx: TeamPg, clientId: string): Promise<CameFrom | undefined> {
  const { rows } = await tx.client.query<Omit<CameFrom, 'consents'>>(
    `select t.source_team as team, m.name as by, t.at from taken_in t
     join member m on m.team_id = t.team_id and m.id = t.by_id where t.team_id = $1 and t.client_id = $2`,
    [tx.teamId, clientId],
  );
  const [came] = rows;
  if (!came) return undefined;
  const consents = await tx.client.query<CameFrom['consents'][number]>(
    `select kind, to_team as "toTeam", given_at as "givenAt", given_by as "givenBy", withdrawn_at as "withdrawnAt"
     from consent_elsewhere where team_id = $1 and client_id = $2 order by given_at, id`,
    [tx.teamId, clientId],
  );
  return { ...came, consents: consents.rows };
}
