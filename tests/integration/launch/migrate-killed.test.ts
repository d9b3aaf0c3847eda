import { type ChildProcess, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import pg from 'pg';
import { afterAll, beforeAll, expect, inject, it, vi } from 'vitest';
import { dropDatabase } from '#lib/launch/migrate.mjs';
import { schemaPrint } from './schema-print.ts';

// Whole processes and servers: a busy machine takes minutes for what takes seconds.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

/** The long form: PLUMBLINE_KILLS=100. */
const KILLS = Number(process.env.PLUMBLINE_KILLS ?? 2);
const made: string[] = [];
let undisturbed: Awaited<ReturnType<typeof schemaPrint>>;

beforeAll(async () => {
  undisturbed = await schemaPrint(addressOf(inject('template')));
});
afterAll(async () => {
  for (const url of made) await dropDatabase(url);
});

it('says what a whole schema is', () => {
  expect(undisturbed.columns?.length).toBeGreaterThan(300);
  expect(undisturbed.migrations?.length).toBeGreaterThan(5);
});

it.concurrent('a migration whose process dies while the server works on it is waited for, not done twice', async () => {
  const url = await makeDatabase();
  const held = await holdInside(url);
  await killWhileHeld(url, held);
  const again = migrate(url); // finds the server still at work for the dead process
  await new Promise((done) => setTimeout(done, 300));
  await held.letGo();
  expect(await ended(again)).toEqual({ code: 0, said: expect.stringMatching(/^\d+ migrations applied$/) });
  expect(await schemaPrint(url)).toEqual(undisturbed);
});

it.concurrent('a migration that was undone with its process is done again', async () => {
  const url = await makeDatabase();
  const held = await holdInside(url);
  await killWhileHeld(url, held);
  await held.endTheOther();
  await held.letGo();
  expect((await ended(migrate(url))).code).toBe(0);
  expect(await schemaPrint(url)).toEqual(undisturbed);
});

it.concurrent.each(Array.from({ length: KILLS }, (_, index) => index))(
  'a process killed at any moment leaves what the next one finishes (%i)',
  async (index) => {
    const url = await makeDatabase();
    const child = migrate(url);
    // Over the whole of a run, which takes half a second to a second here.
    await Promise.race([
      new Promise((done) => setTimeout(done, 150 + ((index * 137 + 61) % 700))),
      once(child, 'exit'),
    ]);
    child.kill('SIGKILL');
    expect((await ended(migrate(url))).code).toBe(0);
    expect(await schemaPrint(url)).toEqual(undisturbed);
  },
);

function addressOf(database: string): string {
  const url = new URL(inject('serverUrl'));
  url.pathname = `/${database}`;
  return url.href;
}

async function makeDatabase(): Promise<string> {
  const name = `plumbline_k_${randomUUID().replaceAll('-', '').slice(0, 16)}`;
  const url = addressOf(name);
  made.push(url);
  await asOwner(inject('serverUrl'), (client) => client.query(`create database ${name} template template0`));
  return url;
}

async function asOwner<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

function migrate(url: string): ChildProcess {
  return spawn(process.execPath, ['lib/launch/migrate.mjs'], {
    env: { ...process.env, DATABASE_URL: url, PLUMBLINE_SECRET: inject('secret') },
  });
}

function ended(child: ChildProcess): Promise<{ code: number | null; said: string }> {
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (chunk) => {
      said += chunk;
    });
  return new Promise((done) => child.on('close', (code) => done({ code, said: said.trim() })));
}

type Held = {
  isReached: () => Promise<boolean>;
  letGo: () => Promise<void>;
  endTheOther: () => Promise<void>;
};

/** Makes the server stop in the middle of the first migration, when thirty tables are made. */
async function holdInside(url: string): Promise<Held> {
  const holder = new pg.Client({ connectionString: url });
  await holder.connect();
  await holder.query(`create schema hold`);
  await holder.query(`create function hold.stop() returns event_trigger language plpgsql as $$ begin
    if (select count(*) from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r') = 30
      then perform pg_advisory_xact_lock(99); end if; end $$`);
  await holder.query('create event trigger hold_there on ddl_command_start execute function hold.stop()');
  await holder.query('select pg_advisory_lock(99)');
  const waiting = `from pg_locks l where l.locktype = 'advisory' and l.objid = 99 and not l.granted
    and l.database = (select oid from pg_database where datname = current_database())`;
  return {
    isReached: async () => ((await holder.query(`select 1 ${waiting}`)).rowCount ?? 0) > 0,
    endTheOther: async () => {
      await holder.query(`select pg_terminate_backend(l.pid, 5000) ${waiting}`);
    },
    letGo: async () => {
      await holder.query('select pg_advisory_unlock(99)');
      await holder.query('drop event trigger hold_there');
      await holder.query('drop schema hold cascade');
      await holder.end();
    },
  };
}

async function killWhileHeld(url: string, held: Held): Promise<void> {
  const child = migrate(url);
  await expect.poll(held.isReached, { timeout: 60_000 }).toBe(true);
  child.kill('SIGKILL');
  await once(child, 'exit');
}
