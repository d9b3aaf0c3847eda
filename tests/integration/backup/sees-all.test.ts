import pg from 'pg';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { assertSeesAll } from '#lib/launch/backup/assert-sees-all.ts';
import { countRows } from '#lib/launch/backup/table-figures.ts';
import { makeTestClient, makeTestTeam, ownerQuery } from '#tests/integration/support/database.ts';

/** An owner of tables who is no superuser, as on a rented server. */
const ROLE = `backup_${crypto.randomUUID().replaceAll('-', '').slice(0, 12)}`;
let client: pg.Client;

beforeAll(async () => {
  await makeTestClient(await makeTestTeam());
  client = new pg.Client({ connectionString: process.env.DATABASE_URL });
  await client.connect();
  await client.query(`create role ${ROLE} nologin nosuperuser nobypassrls`);
  await client.query(`grant all on all tables in schema public to ${ROLE}`);
  await client.query(`alter table client owner to ${ROLE}`);
});
afterAll(async () => {
  await client.query('reset role');
  await client.query(`drop owned by ${ROLE} cascade`);
  await client.query(`drop role ${ROLE}`);
  await client.end();
});

it('takes a superuser, whom no wall hides anything from', async () => {
  await expect(assertSeesAll(client)).resolves.toBeUndefined();
  expect((await countRows(client)).client).toBe(1);
});

it('refuses the owner whom forced row-level security shows nothing, by the name of a table', async () => {
  await client.query(`set role ${ROLE}`);
  expect((await countRows(client)).client).toBe(0); // the trap: no error, no rows
  await expect(assertSeesAll(client)).rejects.toThrow(
    /hides rows of the table "absence" from the role "backup_/,
  );
  await client.query('reset role');
});

it('takes an owner with the policies that migrations give one, and no other', async () => {
  await ownerQuery(
    `do $$ declare t record; begin for t in select relname from pg_class where relrowsecurity loop
       execute format('create policy sees_all on %I for select to ${ROLE} using (true)', t.relname); end loop; end $$`,
  );
  await client.query(`set role ${ROLE}`);
  await expect(assertSeesAll(client)).resolves.toBeUndefined();
  expect((await countRows(client)).client).toBe(1);
  await ownerQuery(`create policy narrower on question as restrictive for select to ${ROLE} using (false)`);
  await expect(assertSeesAll(client)).rejects.toThrow(/"question"/);
  await client.query('reset role');
});
