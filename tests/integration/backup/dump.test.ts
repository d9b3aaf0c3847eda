import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { closeDb } from '#lib/db/client.ts';
import { findClientTools } from '#lib/launch/backup/client-tools.ts';
import { tableFigures } from '#lib/launch/backup/table-figures.ts';
import { makeGroup } from '#tests/integration/night/arrange.ts';
import { command, type OwnServer, openOwnServer } from './own-server.ts';

// Whole processes and servers: a busy machine takes minutes for what takes seconds.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

/** A whole PostgreSQL of the distribution: server and client tools of one version. */
const installed = (existsSync('/usr/lib/postgresql') ? readdirSync('/usr/lib/postgresql') : [])
  .map((version) => join('/usr/lib/postgresql', version))
  .find((folder) => ['initdb', 'postgres', 'pg_dump'].every((name) => existsSync(join(folder, 'bin', name))));
if (!installed)
  process.stdout.write('The backup by pg_dump could not be tried: no PostgreSQL is installed here.\n');

it('finds no tools for a server that is newer than any', () => {
  expect(findClientTools(99)).toBeUndefined();
});

describe.runIf(installed)('a backup by pg_dump', () => {
  let server: OwnServer;
  let address: string;
  let folder: string;
  beforeAll(async () => {
    server = await openOwnServer(installed);
    address = process.env.DATABASE_URL ?? '';
    folder = join(server.folder, 'kept');
    await makeGroup();
  });
  afterAll(async () => {
    await closeDb();
    server.remove();
  });

  it('is counted, and comes back row by row into an empty database only', async () => {
    const before = await figures(address);
    const backup = await command('backup', server.folder, folder, address);
    expect(backup).toEqual({ code: 0, said: expect.stringContaining('(by pg_dump)') });
    const { tables, way } = JSON.parse(readFileSync(join(folder, 'manifest.json'), 'utf8'));
    expect({ way, tables }).toEqual({ way: 'dump', tables: before });

    const again = await command('restore', server.folder, folder, address);
    expect(again).toEqual({ code: 1, said: expect.stringMatching(/is not empty: it has the table/) });
    const other = new URL(address);
    other.pathname = '/elsewhere';
    const restored = await command('restore', server.folder, folder, other.href);
    expect(restored).toEqual({ code: 0, said: expect.stringContaining('each counted and compared') });
    expect(await figures(other.href)).toEqual(before);
    expect(await walls(other.href)).toEqual(await walls(address));
  });

  it('names a damaged dump', async () => {
    rmSync(join(server.folder, 'files'), { recursive: true });
    const dump = join(folder, 'database.dump');
    writeFileSync(dump, readFileSync(dump).subarray(0, -1));
    const other = new URL(address);
    other.pathname = '/nowhere';
    const refused = await command('restore', server.folder, folder, other.href);
    expect(refused).toEqual({
      code: 1,
      said: expect.stringMatching(/database\.dump has \d+ bytes, not \d+/),
    });
  });
});

async function query<Row extends pg.QueryResultRow>(url: string, sql: string): Promise<Row[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query<Row>(sql)).rows;
  } finally {
    await client.end();
  }
}

async function figures(url: string) {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await tableFigures(client);
  } finally {
    await client.end();
  }
}

function walls(url: string) {
  return query(url, 'select tablename, policyname, qual from pg_policies order by 1, 2');
}
