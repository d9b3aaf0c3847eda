import { spawn } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { ClientTools } from './client-tools.ts';

const DUMP = 'database.dump';
/** Made again by the migration that follows: walls, functions, grants; and the queue, which the ledger fills anew. */
const NOT_RESTORED = / (POLICY|ROW SECURITY|ACL|DEFAULT ACL|SCHEMA|COMMENT) /;

/** Writes the database as a snapshot of the exporting transaction sees it. */
export async function writeDump(
  tools: ClientTools,
  address: string,
  snapshot: string,
  folder: string,
): Promise<void> {
  // Without --enable-row-security pg_dump refuses what is walled; who may see it all was asked before.
  const args = ['--format=custom', '--no-owner', '--enable-row-security', '--schema=public'];
  await run(tools.dump, [...args, `--snapshot=${snapshot}`, `--file=${join(folder, DUMP)}`], address);
}

/** Rows of each table as they stand in the dump itself. */
export async function countDumped(tools: ClientTools, folder: string): Promise<Record<string, number>> {
  const child = spawn(tools.restore, ['--data-only', '--file=-', join(folder, DUMP)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<number | null>((done) => child.on('close', done));
  const counts: Record<string, number> = {};
  let table: string | undefined;
  for await (const line of createInterface({ input: child.stdout })) {
    if (table === undefined) {
      table = /^COPY public\."?([^" (]+)"? /.exec(line)?.[1];
      if (table !== undefined) counts[table] = 0;
    } else if (line === '\\.') table = undefined;
    else counts[table] = (counts[table] ?? 0) + 1;
  }
  if ((await ended) !== 0) throw new Error('pg_restore cannot read the dump that was just written.');
  return counts;
}

/** Fills an empty database, whole or not at all. */
export async function readDump(tools: ClientTools, address: string, folder: string): Promise<void> {
  const file = join(folder, DUMP);
  const list = await run(tools.restore, ['--list', file], address);
  const wanted = list.split('\n').filter((line) => !NOT_RESTORED.test(line));
  const scratch = await mkdtemp(join(tmpdir(), 'plumbline-restore-'));
  const listFile = join(scratch, 'list');
  await writeFile(listFile, wanted.join('\n'));
  const args = ['--no-owner', '--single-transaction', '--exit-on-error', `--use-list=${listFile}`];
  const { pathname } = new URL(address);
  const database = `--dbname=${decodeURIComponent(pathname.slice(1))}`;
  await run(tools.restore, [...args, database, file], address).finally(() =>
    rm(scratch, { recursive: true }),
  );
}

/** The address goes by the environment: other people of this machine can read the arguments of a process. */
function run(command: string, args: string[], address: string): Promise<string> {
  const url = new URL(address);
  const environment = {
    ...process.env,
    PGHOST: url.hostname,
    PGPORT: url.port || '5432',
    PGUSER: decodeURIComponent(url.username),
    PGPASSWORD: decodeURIComponent(url.password),
    PGDATABASE: decodeURIComponent(url.pathname.slice(1)),
    ...(url.searchParams.get('sslmode') && { PGSSLMODE: url.searchParams.get('sslmode') ?? '' }),
  };
  return new Promise((done, fail) => {
    const child = spawn(command, args, { env: environment, stdio: ['ignore', 'pipe', 'pipe'] });
    let [told, faults] = ['', ''];
    child.stdout.on('data', (chunk) => {
      told += chunk;
    });
    child.stderr.on('data', (chunk) => {
      faults += chunk;
    });
    child.on('error', fail);
    child.on('close', (code) =>
      code === 0 ? done(told) : fail(new Error(`${command} failed:\n${faults.slice(-2000)}`)),
    );
  });
}
