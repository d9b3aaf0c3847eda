import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';

const root = join(import.meta.dirname, '../../..');
const data = join(root, '.data/browser-morning');

export const LEAD = { name: 'Runa Feld', email: 'runa@plumb.example', password: 'chalk-and-a-long-rope' };

function environment(): Record<string, string> {
  return JSON.parse(readFileSync(join(data, 'environment.json'), 'utf8'));
}

/** Makes the team as the README tells an owner to. */
export function makeMorningTeam(): void {
  const args = ['--import', './lib/launch/with-env.mjs', '--import', 'tsx', 'prisma/make-team.ts'];
  const about = ['--team', 'Upright', '--name', LEAD.name, '--email', LEAD.email, '--zone', 'Europe/Berlin'];
  execFileSync(process.execPath, [...args, ...about], {
    cwd: root,
    env: { ...process.env, PLUMBLINE_DATA: data, PLUMBLINE_FIRST_PASSWORD: LEAD.password, DATABASE_URL: '' },
  });
}

/** Looks into the database as its owner. */
export async function morningQuery<Row extends pg.QueryResultRow>(
  sql: string,
  values: unknown[] = [],
): Promise<Row[]> {
  const client = new pg.Client({ connectionString: environment().DATABASE_URL });
  await client.connect();
  try {
    return (await client.query<Row>(sql, values)).rows;
  } finally {
    await client.end();
  }
}
