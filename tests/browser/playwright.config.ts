import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig } from '@playwright/test';
import { CLOCK_FILE, DEMO_PORT, MORNING_PORT, MORNING_START } from './support/servers.ts';

const root = join(import.meta.dirname, '../..');
const data = (name: string) => join(root, '.data', `browser-${name}`);

// Only the process that starts the run prepares; the workers that read this file again do not.
if (!process.env.PLUMBLINE_BROWSER_PREPARED) {
  for (const name of ['demo', 'morning']) rmSync(data(name), { recursive: true, force: true });
  mkdirSync(join(root, '.data'), { recursive: true });
  writeFileSync(CLOCK_FILE, MORNING_START);
  process.env.PLUMBLINE_BROWSER_PREPARED = 'yes';
}
/** On a Redis that is given, each server has a database of its own. */
const redisOf = (database: number) => {
  if (!process.env.REDIS_URL) return '';
  const url = new URL(process.env.REDIS_URL);
  url.pathname = `/${database}`;
  return url.href;
};
const given = process.env.CHROMIUM_PATH;
const server = (name: string, port: number, environment: Record<string, string>) => ({
  command: 'node lib/launch/start.mjs',
  cwd: root,
  url: `http://localhost:${port}/readyz`,
  timeout: 300_000,
  gracefulShutdown: { signal: 'SIGTERM' as const, timeout: 30_000 },
  stdout: 'pipe' as const,
  env: {
    PORT: String(port),
    PLUMBLINE_DATA: data(name),
    PLUMBLINE_ORIGIN: `http://localhost:${port}`,
    DATABASE_URL: '',
    ...environment,
  },
});

export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.ts',
  outputDir: join(root, 'tests/output/results'),
  // Two files at a time: a file changes only clients, ladders and skills that no other file reads for what it says.
  workers: 2,
  timeout: 300_000,
  expect: { timeout: 10_000 },
  reporter: [['list'], ['json']],
  use: {
    baseURL: `http://localhost:${DEMO_PORT}`,
    locale: 'en-GB',
    timezoneId: 'Europe/Berlin',
    actionTimeout: 15_000,
    navigationTimeout: 30_000,
    // A picture of the page around every press of a key would take longer than the test itself.
    trace: { mode: 'retain-on-failure', snapshots: false, screenshots: false, sources: true },
    screenshot: 'only-on-failure',
    launchOptions: {
      ...(given && existsSync(given) ? { executablePath: given } : {}),
      args: ['--disable-dev-shm-usage', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
    },
  },
  webServer: [
    server('demo', DEMO_PORT, { REDIS_URL: redisOf(11) }),
    server('morning', MORNING_PORT, {
      PLUMBLINE_DEMO: 'off',
      PLUMBLINE_CLOCK_FILE: CLOCK_FILE,
      REDIS_URL: redisOf(12),
    }),
  ],
});
