import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import type { TestProject } from 'vitest/node';
import { startPostgres } from '#lib/launch/postgres.mjs';

declare module 'vitest' {
  // biome-ignore lint/style/useConsistentTypeDefinitions: an interface is what Vitest merges
  export interface ProvidedContext {
    serverUrl: string;
    template: string;
    secret: string;
  }
}

const SETTINGS = ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off', 'max_connections=200'];
const secret = process.env.PLUMBLINE_SECRET ?? 'kZ0u8rT3yQ6wN1bV5mX9cL2jH7gF4dS0pA8oI6eR';

/** One server (DATABASE_URL's, else the embedded one), one migrated template that every test file clones. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const given = process.env.DATABASE_URL;
  const folder = join(process.cwd(), '.data', 'test');
  mkdirSync(folder, { recursive: true });
  const embedded = given
    ? undefined
    : await startPostgres({ folder, password: 'only-for-tests', settings: SETTINGS });
  const template = `plumbline_tpl_${process.pid}`;
  const url = new URL(given ?? embedded?.url('postgres') ?? '');
  url.pathname = `/${template}`;
  execFileSync(process.execPath, ['lib/launch/migrate.mjs'], {
    env: { ...process.env, DATABASE_URL: url.href, PLUMBLINE_SECRET: secret },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  url.pathname = '/postgres';
  project.provide('serverUrl', url.href);
  project.provide('template', template);
  project.provide('secret', secret);
  return async () => {
    const admin = new pg.Client({ connectionString: url.href });
    await admin.connect();
    await admin.query(`drop database if exists ${template} with (force)`);
    await admin.end();
    if (embedded && !embedded.reused) embedded.stop();
  };
}
