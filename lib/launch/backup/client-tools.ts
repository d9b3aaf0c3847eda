import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Where distributions put the client tools of each version, beside the PATH. */
const USUAL = '/usr/lib/postgresql';

export type ClientTools = { dump: string; restore: string; major: number };

/** pg_dump and pg_restore that can read a server of this version: theirs must not be older. Undefined: none here. */
export function findClientTools(serverMajor: number): ClientTools | undefined {
  const folders = (process.env.PATH ?? '').split(delimiter);
  if (existsSync(USUAL)) folders.push(...readdirSync(USUAL).map((version) => join(USUAL, version, 'bin')));
  const found = folders
    .map((folder) => ({ dump: join(folder, 'pg_dump'), restore: join(folder, 'pg_restore') }))
    .filter(({ dump, restore }) => existsSync(dump) && existsSync(restore))
    .map((tools) => ({ ...tools, major: majorOf(tools.dump) }))
    .filter(({ major }) => major >= serverMajor)
    .sort((a, b) => a.major - b.major);
  return found[0];
}

function majorOf(tool: string): number {
  const { stdout } = spawnSync(tool, ['--version'], { encoding: 'utf8' });
  return Number(/\(PostgreSQL\) (\d+)/.exec(stdout ?? '')?.[1] ?? 0);
}
