import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import pg from 'pg';
import { freePort, startPostgres } from '../../lib/launch/postgres.mjs';

// Pages and worker as a real deployment runs them, on a database server of their own that may be stopped.
const root = join(import.meta.dirname, '../..');
const TOKEN = 'a-token-for-metrics-of-this-test';
const SECRET = 'p3Zq8Xv1Lw6Tn0Ry5Kd2Hs7Gf4Jb9Mc3Va8Ue1Oi';
const FAST = ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off'];
/** What the client writes into every check-in. */
const WROTE = 'Zwirbelknochen';

type Told = { cookie: string; clientId: string; bodies: object[] };
const folder = mkdtempSync(join(tmpdir(), 'plumbline-operation-'));
chmodSync(folder, 0o755);
const running: ChildProcess[] = [];
let logged = '';
let server: Awaited<ReturnType<typeof startPostgres>> | undefined;

test.afterAll(() => {
  for (const child of running) child.kill('SIGTERM'); // passed on to what each of them started
  server?.remove();
  rmSync(folder, { recursive: true, force: true });
});

function serve(what: 'web' | 'worker', environment: Record<string, string>): ChildProcess {
  const child = spawn(process.execPath, ['lib/launch/serve.mjs', what], {
    cwd: root,
    env: { ...process.env, ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (chunk) => {
      logged += chunk;
    });
  running.push(child);
  return child;
}

test('pages and worker say how they are, finish what they have in hand, and keep words out of their logs', async () => {
  const [dbPort, port] = [await freePort(), await freePort()];
  const place = { folder: join(folder, 'postgres'), password: 'only-for-this', port: dbPort, settings: FAST };
  server = await startPostgres(place);
  const environment = {
    DATABASE_URL: server.url('plumbline'),
    REDIS_URL: '',
    PLUMBLINE_SECRET: SECRET,
    PLUMBLINE_ORIGIN: `http://localhost:${port}`,
    PLUMBLINE_DEMO: 'off',
    PLUMBLINE_FILES: join(folder, 'files'),
    PLUMBLINE_METRICS_TOKEN: TOKEN,
    PLUMBLINE_LOG: 'trace',
    NODE_ENV: 'production' as const,
    PORT_INSIDE: String(port),
  };
  const env = { ...process.env, ...environment };
  execFileSync(process.execPath, ['lib/launch/migrate.mjs'], { cwd: root, env });
  const { appUrl } = await import('../../lib/launch/migrate.mjs');
  const arrange = { ...env, APP_DATABASE_URL: appUrl(environment.DATABASE_URL, SECRET) };
  const told: Told = JSON.parse(
    execFileSync(process.execPath, ['--import', 'tsx', 'tests/browser/support/arrange-operation.ts'], {
      cwd: root,
      env: arrange,
      encoding: 'utf8',
    }),
  );
  const worker = serve('worker', environment);
  const web = serve('web', environment);
  const ask = async (path: string, init: RequestInit = {}) => {
    const answer = await fetch(`http://localhost:${port}${path}`, init);
    return { status: answer.status, text: await answer.text(), headers: answer.headers };
  };
  const status = (path: string) =>
    ask(path).then(
      (answer) => answer.status,
      () => 0,
    );
  const send = (body: object | undefined) =>
    ask('/api/check-ins', {
      method: 'POST',
      headers: {
        cookie: told.cookie,
        origin: `http://localhost:${port}`,
        'content-type': 'application/json',
      },
      body: JSON.stringify(body),
    });

  await expect.poll(() => status('/readyz'), { timeout: 60_000 }).toBe(200);
  for (const path of ['/livez', '/readyz']) {
    const { text, headers } = await ask(path);
    expect(text).toMatch(/^(live|ready)\n$/);
    expect([...headers.values()].join('\n')).not.toMatch(/\d+\.\d+\.\d+/);
  }
  expect(await status('/metrics')).toBe(401);
  expect((await send(told.bodies[0])).status).toBe(201);
  const figures = await ask('/metrics', { headers: { authorization: `Bearer ${TOKEN}` } });
  expect(figures.text).toContain('plumbline_submits_total{outcome="kept"} 1');
  expect(figures.text).toContain('plumbline_up{part="database"} 1');

  // A fault of the database that quotes what it was given reaches neither the log nor the answer.
  const owner = new pg.Client({ connectionString: environment.DATABASE_URL });
  await owner.connect();
  await owner.query('alter table check_in add constraint never check (words = $$nothing$$) not valid');
  const refused = await send(told.bodies[1]);
  expect(refused.status).toBe(500);
  expect(refused.text).not.toContain(WROTE);
  await owner.query('alter table check_in drop constraint never');
  await expect.poll(() => logged).toContain('request failed');
  await owner.end();

  // The database goes and comes back.
  server.stop();
  await expect.poll(() => status('/readyz'), { timeout: 5_000, intervals: [100] }).toBe(503);
  expect(await status('/livez')).toBe(200);
  server = await startPostgres(place);
  await expect.poll(() => status('/readyz'), { timeout: 30_000 }).toBe(200);

  // Told to end while a check-in is being kept: it is kept, and its phone is told.
  const holder = new pg.Client({ connectionString: environment.DATABASE_URL });
  await holder.connect();
  await holder.query('begin');
  await holder.query('select 1 from client where id = $1 for update', [told.clientId]);
  const inHand = send(told.bodies[2]);
  const isHeld = async () => (await holder.query('select 1 from pg_locks where not granted')).rowCount !== 0;
  await expect.poll(isHeld).toBe(true);
  const ended = Promise.all([web, worker].map((child) => new Promise((done) => child.on('exit', done))));
  web.kill('SIGTERM');
  worker.kill('SIGTERM');
  await expect.poll(() => status('/readyz'), { timeout: 2_000, intervals: [50] }).not.toBe(200);
  await holder.query('commit');
  await holder.end();
  expect((await inHand).status).toBe(201);
  expect(await Promise.race([ended, new Promise((late) => setTimeout(() => late('late'), 25_000))])).toEqual([
    143, 0,
  ]);
  server.stop();

  expect(logged).toContain('worker ready');
  for (const word of [WROTE, SECRET, TOKEN, told.cookie.split('=')[1] ?? '-', 'only-for-this'])
    expect(logged).not.toContain(word);
});
