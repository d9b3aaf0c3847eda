// npm start: from a fresh clone to a running product. `--dev` serves the pages with reload and builds nothing.
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { build, checkNode, dataFolder, install, PlainError, root, run, say, secrets } from './steps.mjs';
import { WORKER_ARGS } from './worker-args.mjs';

const dev = process.argv.includes('--dev');
const port = Number(process.env.PORT ?? 3000);
const host = process.env.HOST ?? '127.0.0.1';
const STOP_MS = 25_000;
const READY_MS = 60_000;
const children = [];
let postgres;
let stopping = false;

async function assertPortFree() {
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    throw new PlainError(`PORT is "${process.env.PORT}": set it to a whole number from 1 to 65535.`);
  }
  await new Promise((done, fail) => {
    const probe = createServer();
    probe.once('error', (error) =>
      fail(
        error.code === 'EADDRINUSE'
          ? new PlainError(
              `Port ${port} is in use. Stop what runs there, or choose another: PORT=${port + 1} npm start`,
            )
          : new PlainError(`Port ${port} cannot be opened: ${error.message}`),
      ),
    );
    probe.listen(port, host, () => probe.close(done));
  });
}

async function startDatabase(kept) {
  if (process.env.DATABASE_URL) return process.env.DATABASE_URL;
  const { startPostgres } = await import('./postgres.mjs');
  postgres = await startPostgres({ folder: join(dataFolder, 'postgres'), password: kept.database });
  return postgres.url('plumbline');
}

/** An embedded database whose first filling was cut short is emptied and filled again; a real server's is never touched. */
async function fillDemo(environment, ownerUrl) {
  if (environment.PLUMBLINE_DEMO !== 'on') return;
  const begun = join(dataFolder, 'demo-begun');
  const ready = join(dataFolder, 'demo-ready');
  if (existsSync(ready)) return;
  if (postgres && existsSync(begun)) {
    say('The first filling was cut short: starting it again');
    const { dropDatabase, ensureDatabase } = await import('./migrate.mjs');
    await dropDatabase(ownerUrl);
    await ensureDatabase(ownerUrl);
    await run(process.execPath, ['lib/launch/migrate.mjs'], { what: 'The migration', env: environment });
  }
  writeFileSync(begun, 'filling\n');
  say('Filling the demo team if the database is empty');
  await run(process.execPath, ['--import', 'tsx', 'prisma/demo.ts'], {
    what: 'Filling the demo team',
    env: environment,
  });
  writeFileSync(ready, 'filled\n');
}

/** What `npm run make-team` and other programs run by hand need; readable by the owner of the checkout only. */
function keepForTools(environment) {
  const names = [
    'DATABASE_URL',
    'APP_DATABASE_URL',
    'REDIS_URL',
    'PLUMBLINE_SECRET',
    'PLUMBLINE_ORIGIN',
    'PLUMBLINE_DEMO',
    'PLUMBLINE_FILES',
  ];
  const kept = Object.fromEntries(
    names.filter((name) => environment[name]).map((name) => [name, environment[name]]),
  );
  writeFileSync(join(dataFolder, 'environment.json'), JSON.stringify(kept), { mode: 0o600 });
}

function launch(name, args, environment) {
  mkdirSync(join(dataFolder, 'log'), { recursive: true });
  const file = join(dataFolder, 'log', `${name}.log`);
  const log = openSync(file, 'a');
  // The development server runs children of its own and cannot be guarded this way.
  const guarded = !(dev && name === 'web');
  const child = spawn(
    process.execPath,
    [...(guarded ? ['--import', './lib/launch/guard.mjs'] : []), ...args],
    {
      cwd: root,
      env: environment,
      detached: true,
      stdio: ['ignore', log, log, ...(guarded ? ['ipc'] : [])],
    },
  );
  children.push(child);
  child.on('exit', (code) => {
    if (stopping) return;
    const tail = readFileSync(file, 'utf8').split('\n').slice(-15).join('\n');
    process.stderr.write(`The ${name} process ended (${code}). Its last lines (${file}):\n${tail}\n`);
    void stop(1);
  });
}

async function stop(code) {
  if (stopping) return;
  stopping = true;
  const ended = children.map((child) =>
    child.exitCode !== null || child.signalCode !== null
      ? undefined
      : new Promise((done) => {
          const hard = setTimeout(() => child.kill('SIGKILL'), STOP_MS);
          child.once('exit', () => {
            clearTimeout(hard);
            done();
          });
          child.kill('SIGTERM');
        }),
  );
  await Promise.all(ended);
  postgres?.stop();
  say('Stopped. Everything is kept in .data.');
  process.exit(code);
}

async function waitForBoard(origin) {
  const until = Date.now() + READY_MS;
  while (Date.now() < until && !stopping) {
    const answer = await fetch(`${origin}/readyz`).catch(() => undefined);
    if (answer?.ok && (await fetch(`${origin}/sign-in`).catch(() => undefined))?.ok) return;
    await new Promise((next) => setTimeout(next, 100));
  }
  if (!stopping)
    throw new PlainError(
      `The pages did not answer within ${READY_MS / 1000} s. See ${join(dataFolder, 'log')}.`,
    );
}

async function main() {
  checkNode();
  await assertPortFree();
  await install();
  const kept = secrets();
  const ownerUrl = await startDatabase(kept);
  const { appUrl } = await import('./migrate.mjs');
  const secret = process.env.PLUMBLINE_SECRET ?? kept.app;
  const origin = process.env.PLUMBLINE_ORIGIN ?? `http://localhost:${port}`;
  const environment = {
    ...process.env,
    DATABASE_URL: ownerUrl,
    APP_DATABASE_URL: process.env.APP_DATABASE_URL ?? appUrl(ownerUrl, secret),
    PLUMBLINE_SECRET: secret,
    PLUMBLINE_ORIGIN: origin,
    PLUMBLINE_DEMO: process.env.PLUMBLINE_DEMO ?? 'on',
    PLUMBLINE_FILES: process.env.PLUMBLINE_FILES ?? join(dataFolder, 'files'),
    NEXT_TELEMETRY_DISABLED: '1',
    NODE_ENV: dev ? 'development' : 'production',
  };
  if (process.env.PLUMBLINE_SECRET) {
    await run(process.execPath, ['--import', 'tsx', 'lib/launch/check-env.ts'], {
      what: 'The environment',
      env: environment,
    });
  }
  keepForTools(environment);
  const fill = async () => {
    await run(process.execPath, ['lib/launch/migrate.mjs'], { what: 'The migration', env: environment });
    await fillDemo(environment, ownerUrl);
  };
  await Promise.all([fill(), dev ? undefined : build()]);
  if (stopping) return;
  const next = 'node_modules/next/dist/bin/next';
  launch('web', [next, dev ? 'dev' : 'start', '-p', String(port), '-H', host], environment);
  launch('worker', WORKER_ARGS, environment);
  await waitForBoard(`http://${host === '0.0.0.0' ? '127.0.0.1' : host}:${port}`);
  if (stopping) return;
  say(`Ready: ${origin}`);
  if (environment.PLUMBLINE_DEMO === 'on') {
    const { DEMO_SIGN_IN_LINES } = await import('./demo-lines.mjs');
    for (const line of DEMO_SIGN_IN_LINES(origin)) say(line);
  }
  say('Stop with Ctrl-C.');
}

process.on('SIGINT', () => void stop(0));
process.on('SIGTERM', () => void stop(0));
main().catch((error) => {
  process.stderr.write(error instanceof PlainError ? `${error.message}\n` : `${error.stack ?? error}\n`);
  void stop(1);
});
