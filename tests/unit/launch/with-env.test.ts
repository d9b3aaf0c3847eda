import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { appUrl } from '#lib/launch/migrate.mjs';

const OWNER = 'postgres://plumbline_owner:pw@db.example:5432/plumbline';
const SECRET = 'made-for-this-test-0123456789-abcdef';
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'plumbline-with-env-'));
  writeFileSync(
    join(folder, 'environment.json'),
    JSON.stringify({ APP_DATABASE_URL: 'postgres://of-the-checkout/', PLUMBLINE_SECRET: 'of the checkout' }),
  );
});
afterAll(() => rmSync(folder, { recursive: true }));

/** What a program run by hand finds in its environment. */
function found(given: Record<string, string>): Record<string, string | undefined> {
  const args = ['--import', './lib/launch/with-env.mjs', '-p', 'JSON.stringify(process.env)'];
  const env = { NODE_ENV: 'test' as const, PATH: process.env.PATH, PLUMBLINE_DATA: folder, ...given };
  return JSON.parse(execFileSync(process.execPath, args, { env, encoding: 'utf8' }));
}

it('is that of the checkout when nothing is given, or given empty', () => {
  const mine = { APP_DATABASE_URL: 'postgres://of-the-checkout/', PLUMBLINE_SECRET: 'of the checkout' };
  expect(found({})).toMatchObject(mine);
  expect(found({ DATABASE_URL: '' })).toMatchObject(mine);
});

it('is made of the owner’s address and the secret where a server is given, as in compose', () => {
  const { APP_DATABASE_URL, PLUMBLINE_SECRET } = found({ DATABASE_URL: OWNER, PLUMBLINE_SECRET: SECRET });
  expect(APP_DATABASE_URL).toBe(appUrl(OWNER, SECRET));
  expect(APP_DATABASE_URL).toContain('plumbline_app:');
  expect(PLUMBLINE_SECRET).toBe(SECRET);
});

it('leaves an address that is given', () => {
  const given = { APP_DATABASE_URL: 'postgres://elsewhere/', DATABASE_URL: OWNER, PLUMBLINE_SECRET: SECRET };
  expect(found(given).APP_DATABASE_URL).toBe('postgres://elsewhere/');
});
