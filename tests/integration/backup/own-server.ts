import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inject } from 'vitest';
import { appUrl, ensureDatabase, migrate } from '#lib/launch/migrate.mjs';
import { freePort, serverPlace, startPostgres } from '#lib/launch/postgres.mjs';

const PASSWORD = 'only-for-the-drill';
const FAST = ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off'];

export type OwnServer = {
  folder: string;
  /** Takes the data away, as a lost disk does. */
  wipe: () => void;
  start: () => Promise<void>;
  stop: () => void;
  remove: () => void;
};
export type Told = { code: number; said: string };

/** A checkout's data folder with a server of its own; this process uses it from here on, on one port throughout. */
export async function openOwnServer(native?: string): Promise<OwnServer> {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-drill-'));
  const port = await freePort();
  const secrets = { app: inject('secret'), database: PASSWORD };
  writeFileSync(join(folder, 'secrets.json'), JSON.stringify(secrets));
  mkdirSync(join(folder, 'files'));
  const postgres = join(folder, 'postgres');
  const place = serverPlace(postgres, native); // as root it may lie elsewhere
  let server: Awaited<ReturnType<typeof startPostgres>> | undefined;
  const start = async () => {
    server = await startPostgres({
      folder: postgres,
      password: PASSWORD,
      port,
      settings: FAST,
      ...(native && { native }),
    });
  };
  await start();
  const address = server?.url('plumbline') ?? '';
  await ensureDatabase(address);
  await migrate(address, inject('secret'));
  Object.assign(process.env, {
    DATABASE_URL: address,
    APP_DATABASE_URL: appUrl(address, inject('secret')),
    PLUMBLINE_FILES: join(folder, 'files'),
  });
  const stop = () => server?.stop();
  return {
    folder,
    start,
    stop,
    wipe: () => {
      stop();
      for (const part of [place.folder, postgres, join(folder, 'files')])
        rmSync(part, { recursive: true, force: true });
    },
    remove: () => {
      stop();
      for (const part of [place.folder, folder]) rmSync(part, { recursive: true, force: true });
    },
  };
}

/** Runs one of the documented commands for that data folder, or for the database that `address` names. */
export function command(
  name: 'backup' | 'restore',
  data: string,
  folder: string,
  address?: string,
): Promise<Told> {
  const { DATABASE_URL: _, APP_DATABASE_URL: __, PLUMBLINE_FILES: ___, ...rest } = process.env;
  const environment = { ...rest, PLUMBLINE_DATA: data, ...(address && { DATABASE_URL: address }) };
  const way = name === 'backup' && !address ? ['--way=files'] : [];
  return new Promise((done) => {
    execFile(
      process.execPath,
      ['--import', 'tsx', `lib/launch/backup/${name}.ts`, ...way, folder],
      { env: environment },
      (error, out, faults) => done({ code: error ? 1 : 0, said: `${out}${faults}` }),
    );
  });
}
