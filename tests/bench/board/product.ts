import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { appUrl } from '#lib/launch/migrate.mjs';
import { freePort, startPostgres } from '#lib/launch/postgres.mjs';

const root = join(import.meta.dirname, '../../..');
const SECRET = 'only-for-a-bench-that-nobody-else-can-reach';
export const TEAM = 'Bench';
const LEAD = { email: 'lead@bench.example', password: 'chalk-and-a-long-rope' };
const READY_MS = 60_000;

export type Product = {
  origin: string;
  cookie: string;
  db: pg.Client;
  environment: NodeJS.ProcessEnv;
  stop: () => Promise<void>;
};

/** The product as it is built here, on a PostgreSQL and a port of its own, with one team and its lead signed in. */
export async function startProduct(): Promise<Product> {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-bench-'));
  const server = await startPostgres({ folder, password: 'only-for-this-bench' });
  const url = server.url('plumbline');
  const port = await freePort();
  const origin = `http://localhost:${port}`;
  const environment = {
    ...process.env,
    DATABASE_URL: url,
    APP_DATABASE_URL: appUrl(url, SECRET),
    PLUMBLINE_SECRET: SECRET,
    PLUMBLINE_ORIGIN: origin,
    PLUMBLINE_DEMO: 'off',
    PLUMBLINE_FILES: join(folder, 'files'),
    PLUMBLINE_FIRST_PASSWORD: LEAD.password,
    NEXT_TELEMETRY_DISABLED: '1',
    NODE_ENV: 'production' as const,
  };
  const run = (...args: string[]) => execFileSync(process.execPath, args, { cwd: root, env: environment });
  run('lib/launch/migrate.mjs');
  const about = ['--team', TEAM, '--name', 'Lead', '--email', LEAD.email, '--zone', 'Europe/Berlin'];
  run('--import', 'tsx', 'prisma/make-team.ts', ...about);
  const web = spawn(
    process.execPath,
    ['node_modules/next/dist/bin/next', 'start', '-p', String(port), '-H', '127.0.0.1'],
    { cwd: root, env: environment, stdio: 'ignore' },
  );
  const db = new pg.Client({ connectionString: url });
  await db.connect();
  const stop = async () => {
    await db.end();
    await end(web);
    server.remove();
    rmSync(folder, { recursive: true, force: true });
  };
  try {
    await untilReady(origin);
    return { origin, cookie: await signIn(origin), db, environment, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

async function untilReady(origin: string): Promise<void> {
  const until = Date.now() + READY_MS;
  while (Date.now() < until) {
    if ((await fetch(`${origin}/sign-in`).catch(() => undefined))?.ok) return;
    await new Promise((next) => setTimeout(next, 100));
  }
  throw new Error(`the product did not answer within ${READY_MS / 1000} s`);
}

async function signIn(origin: string): Promise<string> {
  const answer = await fetch(`${origin}/api/auth/sign-in/email`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin },
    body: JSON.stringify(LEAD),
  });
  if (!answer.ok) throw new Error(`the lead could not sign in: ${answer.status} ${await answer.text()}`);
  return answer.headers
    .getSetCookie()
    .map((cookie) => cookie.split(';')[0])
    .join('; ');
}

function end(child: ChildProcess): Promise<void> {
  return new Promise((done) => {
    child.once('exit', () => done());
    child.kill('SIGTERM');
  });
}
