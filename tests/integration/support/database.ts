import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { type TeamScope, teamScope } from '#lib/db/client.ts';
import { CONSENT_VERSION } from '#lib/domain/consent.ts';

/** Runs SQL as the owner: sees every team. For arranging and for looking, never for what is tested. */
export async function ownerQuery<Row extends pg.QueryResultRow>(
  sql: string,
  values: unknown[] = [],
): Promise<Row[]> {
  const client = new pg.Client({ connectionString: process.env.DATABASE_URL });
  await client.connect();
  try {
    return (await client.query<Row>(sql, values)).rows;
  } finally {
    await client.end();
  }
}

export type TestTeam = { scope: TeamScope; teamId: string; memberId: string; userId: string };

/** A team with one lead. */
export async function makeTestTeam(name = 'Test team'): Promise<TestTeam> {
  const ids = { teamId: randomUUID(), memberId: randomUUID(), userId: randomUUID() };
  await ownerQuery(`insert into "user" (id, name, email) values ($1, $2, $3)`, [
    ids.userId,
    name,
    `${ids.userId}@test.example`,
  ]);
  await ownerQuery('insert into team (id, name) values ($1, $2)', [ids.teamId, name]);
  await ownerQuery(
    `insert into member (team_id, id, user_id, role, name, email, zone) values ($1, $2, $3, 'lead', $4, $5, 'Europe/Berlin')`,
    [ids.teamId, ids.memberId, ids.userId, `Lead of ${name}`, `${ids.userId}@test.example`],
  );
  return { ...ids, scope: teamScope(ids.teamId) };
}

/** Two hundred days before the days that tests take place on, whenever they run. */
const JOINED_AT = '2026-05-09T10:00:00Z';

/** A client in training of that team, who gave their consent. */
export async function makeTestClient(
  team: TestTeam,
  options: { name?: string; zone?: string; standing?: string } = {},
): Promise<{ clientId: string; userId: string }> {
  const [clientId, userId] = [randomUUID(), randomUUID()];
  const name = options.name ?? 'Client';
  await ownerQuery(`insert into "user" (id, name, email) values ($1, $2, $3)`, [
    userId,
    name,
    `${userId}@test.example`,
  ]);
  await ownerQuery(
    `insert into client (team_id, id, user_id, coach_id, name, zone, standing, joined_at, invited_at)
     values ($1, $2, $3, $4, $5, $6, $7, $8, '2026-05-08T10:00:00Z')`,
    [
      team.teamId,
      clientId,
      userId,
      team.memberId,
      name,
      options.zone ?? 'Europe/Berlin',
      options.standing ?? 'in-training',
      JOINED_AT,
    ],
  );
  await ownerQuery(
    `insert into consent (team_id, client_id, kind, text_version, given_at, given_by)
     values ($1, $2, 'health-data', $3, $5, $4)`,
    [team.teamId, clientId, CONSENT_VERSION, name, JOINED_AT],
  );
  return { clientId, userId };
}
