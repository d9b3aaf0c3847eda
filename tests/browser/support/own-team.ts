import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext } from '@playwright/test';
import pg from 'pg';

const root = join(import.meta.dirname, '../../..');
const data = join(root, '.data/browser-demo');
const PASSWORD = 'chalk-and-a-long-rope';

type State = Awaited<ReturnType<BrowserContext['storageState']>>;

/**
 * A team of the file's own beside the demo team, made as the README tells an owner to, with its lead signed in. After a
 * test that failed the file begins anew in another process: then the team is there already.
 */
export async function makeOwnTeam(browser: Browser, team: string): Promise<State> {
  const email = `lead@${team.toLowerCase().replaceAll(' ', '-')}.example`;
  if (!(await isThere(team))) make(team, email);
  return signIn(browser, email);
}

async function isThere(team: string): Promise<boolean> {
  return asOwner(async (db) => (await db.query('select from team where name = $1', [team])).rowCount !== 0);
}

function make(team: string, email: string): void {
  const args = ['--import', './lib/launch/with-env.mjs', '--import', 'tsx', 'prisma/make-team.ts'];
  const about = ['--team', team, '--name', `Lead of ${team}`, '--email', email, '--zone', 'Europe/Berlin'];
  execFileSync(process.execPath, [...args, ...about], {
    cwd: root,
    env: { ...process.env, PLUMBLINE_DATA: data, PLUMBLINE_FIRST_PASSWORD: PASSWORD, DATABASE_URL: '' },
  });
}

async function signIn(browser: Browser, email: string): Promise<State> {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto('/sign-in');
  await page.locator('#email').fill(email);
  await page.locator('input[type=password]').fill(PASSWORD);
  await page.keyboard.press('Enter');
  await page.waitForURL('/');
  const state = await context.storageState();
  await context.close();
  return state;
}

/** Works on the demo's database as its owner. */
export async function asOwner<T>(work: (db: pg.Client) => Promise<T>): Promise<T> {
  const { DATABASE_URL } = JSON.parse(readFileSync(join(data, 'environment.json'), 'utf8'));
  const db = new pg.Client({ connectionString: DATABASE_URL });
  await db.connect();
  try {
    return await work(db);
  } finally {
    await db.end();
  }
}

/** Today where the team's lead lives. */
export function todayInBerlin(): string {
  return new Intl.DateTimeFormat('en-CA', { timeZone: 'Europe/Berlin' }).format(new Date());
}

/** Where the demo's films and pictures lie. */
export function demoFiles(): string {
  return JSON.parse(readFileSync(join(data, 'environment.json'), 'utf8')).PLUMBLINE_FILES;
}
