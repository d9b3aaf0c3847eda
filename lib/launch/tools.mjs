// Programs that tests need and that npm does not bring: a Chromium, and a Redis where one can be had.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { PlainError, root, run, say, which } from './steps.mjs';

function aptInstall(name) {
  if (process.getuid?.() !== 0 || !which(['apt-get'])) return false;
  say(`Installing the Debian package ${name}`);
  const options = { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
  if (spawnSync('apt-get', ['install', '-y', '-qq', name], options).status === 0) return true;
  spawnSync('apt-get', ['update', '-qq'], options);
  return spawnSync('apt-get', ['install', '-y', '-qq', name], options).status === 0;
}

/** Path of a Chromium, or undefined when Playwright has its own. */
export async function findChromium() {
  const names = ['chromium', 'chromium-browser', 'google-chrome'];
  const given = process.env.CHROMIUM_PATH;
  if (given) {
    if (!existsSync(given)) throw new PlainError(`CHROMIUM_PATH names ${given}, which is not there.`);
    return given;
  }
  const found = which(names) ?? (aptInstall('chromium') ? which(names) : undefined);
  if (found) return found;
  say('Fetching the browser that Playwright brings');
  await run(process.execPath, [join(root, 'node_modules/@playwright/test/cli.js'), 'install', 'chromium'], {
    what: 'Fetching Chromium (set CHROMIUM_PATH to one that is there)',
  });
  return undefined;
}

/** Path of redis-server, or undefined when none can be had here. */
export function findRedis() {
  return which(['redis-server']) ?? (aptInstall('redis-server') ? which(['redis-server']) : undefined);
}
