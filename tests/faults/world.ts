import { execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import pg from 'pg';
import { appUrl } from '#lib/launch/migrate.mjs';
import { startPostgres } from '#lib/launch/postgres.mjs';
import { pause } from './pause.ts';
import { bundlePrograms, type Programs } from './programs.ts';
import { type FaultRedis, startRedis } from './redis.ts';

export const ROOT = resolve(import.meta.dirname, '../..');
export const SECRET = 'only-f0r-fault-runs-kZ0u8rT3yQ6wN1bV5mX9cL2j';
/** A crash of the server may lose nothing that was said to be kept: no asynchronous commit. A crash of the machine is not tried. */
const POSTGRES = ['fsync=off', 'full_page_writes=off', 'max_connections=120'];

export type Database = { name: string; ownerUrl: string; appUrl: string };

/** A PostgreSQL and, where one can be had, a Redis of our own in a folder of our own; both are gone after `close`. */
export type World = {
  folder: string;
  programs: Programs;
  redis: FaultRedis | undefined;
  /** A new database with everything that `template` holds. */
  clone: (template: string, as?: string) => Promise<Database>;
  /** Folder of the server's data, for its owner. */
  data: string;
  admin: Database;
  /** The server ends as if the power of its process were cut, and starts again on the same port after `awayMs`. */
  restartPostgres: (awayMs?: number) => Promise<void>;
  sql: <Row extends pg.QueryResultRow>(
    database: Database,
    text: string,
    values?: unknown[],
  ) => Promise<Row[]>;
  drop: (database: Database) => Promise<void>;
  close: () => Promise<void>;
};

export async function openWorld(options: { redisServer: string | undefined }): Promise<World> {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-faults-'));
  chmodSync(folder, 0o755); // as root the server runs as another user
  const place = { folder: join(folder, 'postgres'), password: 'only-for-faults', settings: POSTGRES };
  let server = await startPostgres(place);
  const port = Number(new URL(server.url('postgres')).port);
  const addressOf = (name: string): Database => {
    const ownerUrl = server.url(name);
    return { name, ownerUrl, appUrl: appUrl(ownerUrl, SECRET) };
  };
  const admin = addressOf('postgres');
  const migrated = addressOf('migrated');
  let redis: FaultRedis | undefined;
  const close = async () => {
    redis?.kill();
    await disconnect();
    server.remove();
    rmSync(folder, { recursive: true, force: true });
    rmSync(programs.folder, { recursive: true, force: true });
  };
  const programs = await bundlePrograms(folder);
  try {
    execFileSync(process.execPath, [join(ROOT, 'lib/launch/migrate.mjs')], {
      cwd: ROOT,
      env: { ...process.env, DATABASE_URL: migrated.ownerUrl, PLUMBLINE_SECRET: SECRET },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    redis = options.redisServer ? await startRedis(options.redisServer, folder) : undefined;
  } catch (error) {
    await close();
    throw error;
  }
  const [{ data_directory: data = '' } = {}] = await query<{ data_directory: string }>(
    admin,
    'show data_directory',
  );
  let clones = 0;

  return {
    folder,
    data,
    admin,
    programs,
    redis,
    sql: query,
    clone: async (template, as) => {
      clones += 1;
      const name = as ?? `${template}_${clones}`;
      await disconnect(addressOf(template).ownerUrl); // a template is copied while nobody is in it
      await query(admin, `create database ${name} template ${template}`);
      return addressOf(name);
    },
    restartPostgres: async (awayMs = 0) => {
      const pid = Number(execFileSync('head', ['-1', join(data, 'postmaster.pid')], { encoding: 'utf8' }));
      process.kill(pid, 'SIGQUIT'); // immediate: no checkpoint, every connection cut
      while (isAlive(pid)) await pause(10);
      await pause(awayMs);
      server = await startPostgres({ ...place, port });
    },
    drop: async (database) => {
      await disconnect(database.ownerUrl);
      await query(admin, `drop database ${database.name} with (force)`);
    },
    close,
  };
}

/** One connection for each database: the runs ask often, and a new one costs more than what it asks. */
const connections = new Map<string, Promise<pg.Client>>();

async function query<Row extends pg.QueryResultRow>(
  { ownerUrl }: Database,
  text: string,
  values: unknown[] = [],
): Promise<Row[]> {
  const kept = connections.get(ownerUrl) ?? connect(ownerUrl);
  connections.set(ownerUrl, kept);
  return (await (await kept).query<Row>(text, values)).rows;
}

async function connect(ownerUrl: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: ownerUrl });
  const forget = () => connections.delete(ownerUrl);
  client.on('error', forget).on('end', forget);
  return client.connect().then(
    () => client,
    (error: unknown) => {
      forget();
      throw error;
    },
  );
}

async function disconnect(ownerUrl?: string): Promise<void> {
  const leaving = [...connections].filter(([url]) => ownerUrl === undefined || url === ownerUrl);
  for (const [url, client] of leaving) {
    connections.delete(url);
    await client.then((open) => open.end()).catch(() => undefined);
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}
