import { PrismaPg } from '@prisma/adapter-pg';
import pg from 'pg';
import { env } from '#lib/config/env.ts';
import { type Prisma, PrismaClient } from './generated/client.ts';
import { ownStatements } from './own-statements.ts';

declare const teamScopeBrand: unique symbol;
/** Which team an act belongs to. Minted only by lib/auth/scope.ts, the worker's ledger and tests. */
export type TeamScope = { readonly teamId: string; readonly [teamScopeBrand]: true };

/** A transaction inside one team: every row it can see or write belongs to `teamId`. */
export type TeamTx = { readonly teamId: string; readonly db: Prisma.TransactionClient };
/** The same for bulk work: a plain pg connection inside a transaction with the team set. */
export type TeamPg = { readonly teamId: string; readonly client: pg.PoolClient };

type Clients = { prisma: PrismaClient; pool: pg.Pool };
const store = globalThis as typeof globalThis & { plumblineDb?: Clients };

function clients(): Clients {
  if (!store.plumblineDb) {
    const connectionString = env().APP_DATABASE_URL;
    pg.types.setTypeParser(pg.types.builtins.DATE, (value) => value);
    // Statements that one act sends without waiting for each other go out together; they are done in their order.
    const pool = new pg.Pool({ connectionString, max: 10, connectionTimeoutMillis: 5_000, pipeline: true });
    pool.on('error', () => undefined); // a lost idle connection is replaced on next use
    // One in use fails the query that uses it; its own event, unheard, would end the process.
    pool.on('connect', (client) => client.on('error', () => undefined));
    store.plumblineDb = {
      prisma: new PrismaClient({
        adapter: new PrismaPg({ connectionString, max: 10, connectionTimeoutMillis: 5_000 }),
      }),
      pool,
    };
  }
  return store.plumblineDb;
}

/** Prisma without a team: sees only the account tables and what policies let everyone see. */
export function accountDb(): PrismaClient {
  return clients().prisma;
}

/** The plain pool, for definer functions that look across teams (sign-in, owed nights). */
export function pool(): pg.Pool {
  return clients().pool;
}

/** Runs `work` in one transaction that can see one team only. */
export async function withTeam<T>(scope: TeamScope, work: (tx: TeamTx) => Promise<T>): Promise<T> {
  return clients().prisma.$transaction(
    async (db) => {
      await db.$executeRaw`select set_config('app.team_id', ${scope.teamId}, true)`;
      return work({ teamId: scope.teamId, db });
    },
    { maxWait: 5_000, timeout: 20_000 },
  );
}

type PgOptions = {
  /** With `repeatable read` every query sees the team as it was at the first one. */
  isolation?: 'read committed' | 'repeatable read';
  /** The server reads and plans each text once for a connection, whatever its values. For fixed texts only. */
  named?: boolean;
};

/** The same on a plain connection, for bulk reads and writes with `unnest`. */
export async function withTeamPg<T>(
  scope: TeamScope,
  work: (tx: TeamPg) => Promise<T>,
  { isolation = 'read committed', named = false }: PgOptions = {},
): Promise<T> {
  const client = await clients().pool.connect();
  const own = ownStatements(client, { named });
  let broken: Error | undefined;
  try {
    const settings = [`set_config('app.team_id', ${client.escapeLiteral(scope.teamId)}, true)`];
    if (named) settings.push(`set_config('plan_cache_mode', 'force_generic_plan', true)`);
    const begun = client.query(`begin isolation level ${isolation}; select ${settings.join()}`);
    begun.catch(() => undefined); // waited for below: the first statements of `work` go out with it
    const result = await work({ teamId: scope.teamId, client: own.client });
    own.end();
    await begun;
    await client.query('commit');
    return result;
  } catch (error) {
    own.end();
    await client.query('rollback').catch((cause: Error) => {
      broken = cause;
    });
    throw error;
  } finally {
    client.release(broken);
  }
}

/** Mints a scope. Callers: lib/auth (after the session was checked), the worker's ledger, set-up, tests. */
export function teamScope(teamId: string): TeamScope {
  return { teamId } as TeamScope;
}

export async function closeDb(): Promise<void> {
  const open = store.plumblineDb;
  delete store.plumblineDb;
  if (open) await Promise.all([open.prisma.$disconnect(), open.pool.end()]);
}
