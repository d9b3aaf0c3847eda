import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chmod, mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import pg from 'pg';
import { freePort, type serverPlace } from '#lib/launch/postgres.mjs';
import { copyFiles, copyOne, listFiles } from './kept-files.ts';

type Place = ReturnType<typeof serverPlace>;

/** As pg_basebackup leaves out: what a server makes anew when it starts, and what holds only for the running one. */
const LEFT_OUT =
  /^(postmaster\.(pid|opts)|backup_label.*|tablespace_map.*|(pg_wal|pg_replslot|pg_dynshmem|pg_notify|pg_serial|pg_snapshots|pg_stat_tmp|pg_subtrans)\/.*)$|(^|\/)(pgsql_tmp[^/]*(\/.*)?|pg_internal\.init[^/]*|t\d+_\d+[^/]*)$|^global\/pg_control$/;

/** Where the files of the server behind a connection lie on this machine; undefined: it is another machine's. */
export async function localDataFolder(client: pg.ClientBase): Promise<string | undefined> {
  const { rows } = await client.query<{ folder: string; port: string }>(
    `select current_setting('data_directory', true) as folder, current_setting('port') as port`,
  );
  const [row] = rows;
  if (!row?.folder) return undefined;
  const pid = await readFile(join(row.folder, 'postmaster.pid'), 'utf8').catch(() => undefined);
  return pid?.split('\n')[3]?.trim() === row.port ? row.folder : undefined;
}

/**
 * Copies the files of a running server, by PostgreSQL's own online backup: begun and ended in one session, with all WAL
 * that was written between. What changes while it is read is put right by that WAL when the copy first starts.
 */
export async function copyRunningServer(client: pg.ClientBase, data: string, to: string): Promise<void> {
  const slot = `plumbline_backup_${process.pid}`; // keeps the WAL until it is copied; goes with the session
  await client.query('select pg_create_physical_replication_slot($1, true, true)', [slot]);
  const { rows: begun } = await client.query<{ segment: string }>(
    `select pg_walfile_name(pg_backup_start('plumbline', true)) as segment`,
  );
  await copyFiles(data, to, (path) => !LEFT_OUT.test(path));
  await copyOne(data, to, 'global/pg_control'); // last, as pg_basebackup does
  const { rows: ended } = await client.query<{ label: string; tablespaces: string; segment: string }>(
    `select labelfile as label, spcmapfile as tablespaces, pg_walfile_name(lsn) as segment from pg_backup_stop(false)`,
  );
  const [from, end] = [begun[0]?.segment, ended[0]];
  if (!from || !end) throw new Error('The server did not say where its online backup began and ended.');
  if (end.tablespaces.trim() !== '')
    throw new Error('This server has tablespaces outside its folder: back it up with pg_dump instead.');
  await writeFile(join(to, 'backup_label'), end.label);
  await copyWal(data, to, from, end.segment);
}

async function copyWal(data: string, to: string, from: string, until: string): Promise<void> {
  await mkdir(join(to, 'pg_wal', 'archive_status'), { recursive: true });
  const wal = (await listFiles(join(data, 'pg_wal'))).filter((name) => /^[0-9A-F]{24}$/.test(name));
  const needed = wal.filter((name) => name >= from && name <= until);
  for (const name of needed) await copyOne(data, to, `pg_wal/${name}`);
  if (!needed.includes(from) || !needed.includes(until))
    throw new Error('The server removed WAL that the backup needs. Run it again.');
}

/** Starts the copy once, so that the server puts it right, lets `look` in, and shuts it down cleanly. */
export async function settleCopy<T>(
  place: Place,
  data: string,
  address: URL,
  look: (client: pg.Client) => Promise<T>,
): Promise<T> {
  await chmod(data, 0o700);
  if (place.who.uid !== undefined)
    spawnSync('chown', ['-R', `${place.who.uid}:${place.who.gid}`, data], { stdio: 'ignore' });
  const port = await freePort();
  const log = join(data, 'start.log');
  const flags = `-p ${port} -h 127.0.0.1 -k "" -c autovacuum=off -c archive_mode=off -c fsync=off`;
  const control = (args: string[]) =>
    spawnSync(place.bin('pg_ctl'), [...args, '-D', data], { ...place.options, stdio: 'ignore' }).status === 0;
  if (!control(['start', '-w', '-s', '-t', '600', '-l', log, '-o', flags])) {
    const told = existsSync(log) ? (await readFile(log, 'utf8')).split('\n').slice(-6).join('\n') : '';
    throw new Error(`The copy does not start, so it is no backup:\n${told}`);
  }
  const there = new URL(address);
  there.host = `127.0.0.1:${port}`;
  const client = new pg.Client({ connectionString: there.href });
  try {
    await client.connect();
    return await look(client);
  } finally {
    await client.end().catch(() => undefined);
    if (!control(['stop', '-m', 'fast', '-w', '-s', '-t', '600']))
      process.stderr.write('The copy did not shut down cleanly.\n');
  }
}
