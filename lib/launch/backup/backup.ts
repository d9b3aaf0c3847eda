// npm run backup -- [FOLDER]: the whole database and the pictures, counted and described. See README.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chmod, cp, mkdir, mkdtemp, rename, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import pg from 'pg';
import { serverPlace } from '#lib/launch/postgres.mjs';
import { dataFolder } from '#lib/launch/steps.mjs';
import { assertSeesAll } from './assert-sees-all.ts';
import { type ClientTools, findClientTools } from './client-tools.ts';
import { countDumped, writeDump } from './dump.ts';
import { copyFiles } from './kept-files.ts';
import { lostRows } from './lost-rows.ts';
import { type Manifest, writeManifest } from './manifest.ts';
import { copyRunningServer, localDataFolder, settleCopy } from './online-copy.ts';
import { embeddedFolder, openSource } from './source.ts';
import { countChanges, countRows, type TableFigure, tableFigures } from './table-figures.ts';

type Kept = { way: Manifest['way']; tables: Record<string, TableFigure> };

/** `way` left out: pg_dump where a fitting one is, else the files of the server. Throws, and leaves nothing, when it is not whole. */
async function backup(target: string, way?: string): Promise<Manifest> {
  if (existsSync(target))
    throw new Error(`${target} is there already: choose another folder for the backup.`);
  const part = `${target}.part`;
  const source = await openSource();
  const client = new pg.Client({ connectionString: source.address });
  try {
    await client.connect();
    await assertSeesAll(client);
    await mkdir(part, { recursive: true, mode: 0o700 });
    const about = await describeSource(client);
    const kept = await keepDatabase(client, { address: source.address, server: about.server, part, way });
    // After the database: a picture that came meanwhile is one more, never one that is missed.
    if (existsSync(source.files)) await copyFiles(source.files, join(part, 'files'));
    const manifest = await writeManifest(part, { madeAt: new Date().toISOString(), ...about, ...kept });
    spawnSync('sync', ['-f', part], { stdio: 'ignore' }); // on the disk before it has its name
    await rename(part, target);
    return manifest;
  } catch (error) {
    await rm(part, { recursive: true, force: true });
    throw error;
  } finally {
    await client.end().catch(() => undefined);
    source.close();
  }
}

async function describeSource(client: pg.Client) {
  const { rows } = await client.query<{ server: number; database: string; migration: string }>(
    `select current_setting('server_version_num')::int / 10000 as server, current_database() as database,
       (select max(migration_name) from _prisma_migrations where finished_at is not null and rolled_back_at is null) as migration`,
  );
  const [about] = rows;
  if (!about) throw new Error('The server does not say what it is.');
  return about;
}

type From = { address: string; server: number; part: string; way: string | undefined };

async function keepDatabase(client: pg.Client, from: From): Promise<Kept> {
  const tools = from.way === 'files' ? undefined : findClientTools(from.server);
  if (tools) return dumpDatabase(client, from, tools);
  const place = serverPlace(embeddedFolder());
  const data = await localDataFolder(client);
  if (data && existsSync(place.bin('postgres')) && versionOf(place) === from.server)
    return copyDatabase(client, from, { place, data });
  throw new Error(
    `Neither pg_dump ${from.server} or newer nor the files of the server are on this machine. Install the PostgreSQL ${from.server} client tools, or run the backup where the database runs.`,
  );
}

/** One snapshot for all: what is counted is what is dumped. */
async function dumpDatabase(client: pg.Client, { address, part }: From, tools: ClientTools): Promise<Kept> {
  await client.query('begin isolation level repeatable read read only');
  const { rows } = await client.query<{ id: string }>('select pg_export_snapshot() as id');
  const tables = await tableFigures(client);
  await writeDump(tools, address, rows[0]?.id ?? '', part);
  await client.query('commit');
  const counts = Object.fromEntries(Object.entries(tables).map(([table, { rows }]) => [table, rows]));
  assertWhole(lostRows({ before: counts, after: counts, changed: {} }, await countDumped(tools, part)));
  return { way: 'dump', tables };
}

async function copyDatabase(
  client: pg.Client,
  { address, part }: From,
  { place, data }: { place: ReturnType<typeof serverPlace>; data: string },
): Promise<Kept> {
  const target = join(part, 'database');
  // As root the server's user cannot go everywhere: the copy is settled where it can, then put where it belongs.
  const work = place.who.uid === undefined ? part : await mkdtemp(join(tmpdir(), 'plumbline-backup-'));
  try {
    await chmod(work, work === part ? 0o700 : 0o711);
    const settled = join(work, 'database');
    const changesBefore = await countChanges(client);
    const before = await countRows(client);
    await copyRunningServer(client, data, settled);
    const after = await countRows(client);
    const changed = difference(changesBefore, await countChanges(client));
    const tables = await settleCopy(place, settled, new URL(address), tableFigures);
    const kept = Object.fromEntries(Object.entries(tables).map(([table, { rows }]) => [table, rows]));
    assertWhole(lostRows({ before, after, changed }, kept));
    if (work !== part) await cp(settled, target, { recursive: true });
    return { way: 'files', tables };
  } finally {
    if (work !== part) await rm(work, { recursive: true, force: true });
  }
}

function difference(before: Record<string, number>, after: Record<string, number>): Record<string, number> {
  return Object.fromEntries(
    Object.entries(after).map(([table, changes]) => [table, changes - (before[table] ?? 0)]),
  );
}

function assertWhole(lost: string[]): void {
  if (lost.length > 0)
    throw new Error(
      `The backup does not hold what the database holds, so it was thrown away:\n  ${lost.join('\n  ')}`,
    );
}

function versionOf(place: ReturnType<typeof serverPlace>): number {
  const told = spawnSync(place.bin('postgres'), ['--version'], { ...place.options, stdio: 'pipe' });
  return Number(/\) (\d+)/.exec(String(told.stdout))?.[1] ?? 0);
}

if (process.argv[1]?.endsWith('backup/backup.ts')) {
  const stamp = new Date().toISOString().replaceAll(':', '-').slice(0, 19);
  const [flags, folders] = [
    process.argv.slice(2).filter((word) => word.startsWith('--')),
    process.argv.slice(2).filter((word) => !word.startsWith('--')),
  ];
  const target = resolve(folders[0] ?? join(dataFolder, 'backups', stamp));
  backup(target, flags[0]?.replace('--way=', '')).then(
    ({ tables, files, way }) => {
      const rows = Object.values(tables).reduce((sum, table) => sum + table.rows, 0);
      const how = way === 'dump' ? 'by pg_dump' : 'the files of the server, started once and counted';
      process.stdout.write(
        `Backup in ${target}: ${Object.keys(tables).length} tables with ${rows} rows, ${files.length} files (${how}).\n`,
      );
    },
    (error: Error) => {
      process.stderr.write(`No backup: ${error.message}\n`);
      process.exitCode = 1;
    },
  );
}
