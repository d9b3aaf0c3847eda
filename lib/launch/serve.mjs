// One process of a real deployment: `node lib/launch/serve.mjs web|worker`. The application's address follows from the
// owner's and the secret unless APP_DATABASE_URL is given; the owner's address does not reach the process itself.
import { spawn, spawnSync } from 'node:child_process';
import { appUrl } from './migrate.mjs';
import { WORKER_ARGS } from './worker-args.mjs';

const COMMANDS = {
  web: ['node_modules/next/dist/bin/next', 'start', '-p', process.env.PORT_INSIDE ?? '3000', '-H', '0.0.0.0'],
  worker: WORKER_ARGS,
};
/** Orchestrators give thirty seconds. */
const STOP_MS = 25_000;
const args = COMMANDS[process.argv[2]];
const { DATABASE_URL, PLUMBLINE_SECRET } = process.env;
if (!args || !PLUMBLINE_SECRET || !(DATABASE_URL || process.env.APP_DATABASE_URL)) {
  process.stderr.write(
    'Use: serve.mjs web|worker, with PLUMBLINE_SECRET and DATABASE_URL (or APP_DATABASE_URL) set.\n',
  );
  process.exit(1);
}
const environment = {
  ...process.env,
  APP_DATABASE_URL: process.env.APP_DATABASE_URL || appUrl(DATABASE_URL, PLUMBLINE_SECRET),
};
delete environment.DATABASE_URL;
const checked = spawnSync(process.execPath, ['--import', 'tsx', 'lib/launch/check-env.ts'], {
  stdio: 'inherit',
  env: environment,
});
if (checked.status !== 0) process.exit(1);
const child = spawn(process.execPath, args, { stdio: 'inherit', env: environment });
for (const signal of ['SIGINT', 'SIGTERM'])
  process.on(signal, () => {
    child.kill(signal);
    // Whoever reads an answer without an end would keep the pages from ending.
    setTimeout(() => child.kill('SIGKILL'), STOP_MS).unref();
  });
child.on('exit', (code) => process.exit(code ?? 1));
