import { execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import type { QueuePlace } from '#lib/jobs/backend.ts';
import { appUrl } from '#lib/launch/migrate.mjs';
import { startPostgres } from '#lib/launch/postgres.mjs';
import { findRedis } from '#tests/integration/night/redis.ts';

const root = join(import.meta.dirname, '../../..');
const SECRET = 'only-for-a-bench-that-nobody-else-can-reach';

export type Place = {
  /** The owner, outside the walls. */
  db: pg.Client;
  environment: NodeJS.ProcessEnv;
  /** Where jobs go: in PostgreSQL, or on a Redis of this machine; undefined where there is none. */
  postgres: QueuePlace;
  redis: QueuePlace | undefined;
};

/** A PostgreSQL as `npm start` runs it, migrated and empty, and a Redis where there is one. */
export async function openPlace(): Promise<Place> {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-night-'));
  chmodSync(folder, 0o755); // the server runs as another user where this process is root's
  const server = await startPostgres({ folder, password: 'only-for-this-bench' });
  const url = server.url('plumbline');
  const own = {
    APP_DATABASE_URL: appUrl(url, SECRET),
    PLUMBLINE_SECRET: SECRET,
    PLUMBLINE_DEMO: 'off',
    PLUMBLINE_FILES: join(folder, 'files'),
    NODE_ENV: 'production' as const,
    PLUMBLINE_LOG: 'error',
  };
  const environment: NodeJS.ProcessEnv = { ...process.env, ...own };
  delete environment.REDIS_URL;
  execFileSync(process.execPath, ['lib/launch/migrate.mjs'], {
    cwd: root,
    env: { ...environment, DATABASE_URL: url },
  });
  Object.assign(process.env, own); // for the modules of the product that are called from here
  const redis = await findRedis(0);
  const db = new pg.Client({ connectionString: url });
  db.on('error', () => undefined); // the server ends with this process
  await db.connect();
  // Several benches share a place: it goes when the process ends.
  process.once('exit', () => {
    redis?.stop();
    server.remove();
    rmSync(folder, { recursive: true, force: true });
  });
  return {
    db,
    environment,
    postgres: { kind: 'postgres', url: own.APP_DATABASE_URL },
    redis: redis && { kind: 'redis', url: redis.url },
  };
}
