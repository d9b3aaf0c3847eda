// npm run restore -- FOLDER [ERASE-LIST]: puts a backup back into an empty place, counts it, brings it up to date and
// forgets again who had been deleted. See README.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, readdir, rm, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import pg from 'pg';
import { ensureDatabase, migrate } from '#lib/launch/migrate.mjs';
import { serverPlace, startPostgres } from '#lib/launch/postgres.mjs';
import { secrets } from '#lib/launch/steps.mjs';
import { findClientTools } from './client-tools.ts';
import { readDump } from './dump.ts';
import { forgetAgain } from './forget-again.ts';
import { copyFiles, emptyFolder, giveToOwner } from './kept-files.ts';
import { damagedFiles, type Manifest, readManifest } from './manifest.ts';
import { embeddedFolder, filesFolder } from './source.ts';
import { listTables, tableFigures } from './table-figures.ts';

/** Throws before anything is written when the backup is damaged or the place is not empty. */
async function restore(folder: string, eraseList: string | undefined): Promise<Manifest & { again: number }> {
  if (eraseList && !existsSync(eraseList)) throw new Error(`There is no erase list ${eraseList}.`);
  const manifest = await readManifest(folder);
  const files = filesFolder();
  const stood = existsSync(files);
  if (stood && (await readdir(files)).length > 0)
    throw new Error(`${files} holds pictures already: move that folder away first.`);
  if (!process.env.DATABASE_URL) assertNoServer();
  const damaged = await damagedFiles(folder, manifest);
  if (damaged.length > 0)
    throw new Error(`The backup in ${folder} is damaged:\n  ${damaged.join('\n  ')}\nChoose another one.`);
  const place = await (manifest.way === 'files' ? placeFiles(folder, manifest) : placeDump(folder, manifest));
  try {
    await assertSame(place.address, manifest);
    if (existsSync(join(folder, 'files'))) await copyFiles(join(folder, 'files'), files);
    await bringUpToDate(place.address);
    const again = await withClient(place.address, (client) => forgetAgain(client, files, eraseList));
    if (existsSync(files)) await giveToOwner(files);
    return { ...manifest, again };
  } catch (error) {
    await place.undo();
    await (stood ? emptyFolder(files) : rm(files, { recursive: true, force: true }));
    throw error;
  } finally {
    place.close();
  }
}

function assertNoServer(): void {
  const { complete, data } = serverPlace(embeddedFolder());
  if (existsSync(complete) || existsSync(data))
    throw new Error(
      `There is a database in ${embeddedFolder()} already. Move that folder away first: a restore replaces nothing.`,
    );
}

type Place = { address: string; close: () => void; undo: () => Promise<void> };

/** The embedded server of this checkout, made of the files. */
async function placeFiles(folder: string, manifest: Manifest): Promise<Place> {
  if (process.env.DATABASE_URL)
    throw new Error(
      'This backup holds the files of a server, so it becomes the embedded server of this checkout: leave DATABASE_URL out.',
    );
  const embedded = embeddedFolder();
  const { data, complete, who, bin, options, folder: root } = serverPlace(embedded);
  const undo = async () => {
    await rm(complete, { force: true }); // without it the next start empties what is here
    await rm(data, { recursive: true, force: true });
  };
  await mkdir(embedded, { recursive: true });
  await mkdir(root, { recursive: true });
  try {
    await copyFiles(join(folder, 'database'), data);
    for (const path of manifest.folders.filter((each) => each.startsWith('database/')))
      await mkdir(join(data, path.slice('database/'.length)), { recursive: true });
    spawnSync('chmod', ['0700', data]);
    if (who.uid !== undefined) spawnSync('chown', ['-R', `${who.uid}:${who.gid}`, data]);
    const password = secrets().database;
    // Without a network: nobody else can come in before the password is this checkout's.
    const single = spawnSync(bin('postgres'), ['--single', '-D', data, 'postgres'], {
      ...options,
      input: `alter role plumbline_owner password ${pg.escapeLiteral(password)}\n`,
    });
    if (single.status !== 0)
      throw new Error(`The restored server does not start:\n${single.stderr.slice(-1000)}`);
    await writeFile(complete, 'restored\n');
    const server = await startPostgres({ folder: embedded, password });
    return {
      address: server.url(manifest.database),
      close: server.stop,
      undo: async () => {
        server.stop();
        await undo();
      },
    };
  } catch (error) {
    await undo();
    throw error;
  }
}

/** An empty database: DATABASE_URL's, else that of a new embedded server. */
async function placeDump(folder: string, manifest: Manifest): Promise<Place> {
  const given = process.env.DATABASE_URL;
  const embedded = embeddedFolder();
  const server = given ? undefined : await startPostgres({ folder: embedded, password: secrets().database });
  const address = given ?? server?.url(manifest.database) ?? '';
  try {
    await ensureDatabase(address);
    const major = await withClient(address, assertEmpty);
    const tools = findClientTools(Math.max(manifest.server, major));
    if (!tools)
      throw new Error(
        `pg_restore ${manifest.server} or newer is not here: install the PostgreSQL client tools.`,
      );
    await readDump(tools, address, folder);
  } catch (error) {
    server?.stop();
    throw error;
  }
  const empty = 'drop schema public cascade; create schema public';
  return {
    address,
    close: () => server?.stop(),
    undo: () => withClient(address, async (client) => void (await client.query(empty))),
  };
}

/** Answers with the version of the server; makes the role that policies of the dump name. */
async function assertEmpty(client: pg.Client): Promise<number> {
  const [first] = await listTables(client);
  if (first)
    throw new Error(
      `The database is not empty: it has the table "${first}". Name an empty one: a restore replaces nothing.`,
    );
  const { rows } = await client.query<{ role: boolean; major: number }>(
    `select exists (select from pg_roles where rolname = 'plumbline_app') as role,
       current_setting('server_version_num')::int / 10000 as major`,
  );
  if (!rows[0]?.role)
    await client.query('create role plumbline_app login nosuperuser nocreatedb nocreaterole nobypassrls');
  return rows[0]?.major ?? 0;
}

/** Every table with as many rows as the manifest says, and the same ones. */
async function assertSame(address: string, manifest: Manifest): Promise<void> {
  const found = await withClient(address, tableFigures);
  const other = Object.entries(manifest.tables).flatMap(([table, { rows, sum }]) => {
    const here = found[table];
    if (!here) return [`${table} is missing`];
    if (here.rows !== rows) return [`${table} has ${here.rows} rows, not ${rows}`];
    return here.sum === sum ? [] : [`${table} has ${rows} rows, but not the same ones`];
  });
  if (other.length > 0)
    throw new Error(
      `What was restored is not what was backed up, so it was taken away again:\n  ${other.join('\n  ')}`,
    );
}

/** The queue starts empty: the ledger and the outbox know what is owed. Then migrations, walls and functions. */
async function bringUpToDate(address: string): Promise<void> {
  await withClient(address, (client) => client.query('drop schema if exists bullmq cascade'));
  await migrate(address, process.env.PLUMBLINE_SECRET ?? secrets().app);
}

async function withClient<T>(address: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: address });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

if (process.argv[1]?.endsWith('backup/restore.ts')) {
  const folder = process.argv[2];
  const done = folder
    ? restore(resolve(folder), process.argv[3] === undefined ? undefined : resolve(process.argv[3]))
    : Promise.reject(new Error('name the folder of a backup: npm run restore -- FOLDER [ERASE-LIST]'));
  done.then(
    ({ tables, madeAt, again }) => {
      const rows = Object.values(tables).reduce((sum, table) => sum + table.rows, 0);
      process.stdout.write(
        `Restored the backup of ${madeAt}: ${Object.keys(tables).length} tables with ${rows} rows, each counted and compared.${again > 0 ? ` Deleted again: ${again} who had been deleted since.` : ''}\n`,
      );
      process.exit(0); // the migration engine leaves a timer behind
    },
    (error: Error) => {
      process.stderr.write(`Nothing was restored: ${error.message}\n`);
      process.exit(1);
    },
  );
}
