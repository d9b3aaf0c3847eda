import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { startPostgres } from '#lib/launch/postgres.mjs';
import { dataFolder, secrets } from '#lib/launch/steps.mjs';

export type Source = { address: string; files: string; close: () => void };

/** What `npm start` wrote down for tools, where it ran; what is set wins. */
function kept(): Record<string, string> {
  const file = join(dataFolder, 'environment.json');
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : {};
}

/** Where pictures lie. */
export function filesFolder(): string {
  return process.env.PLUMBLINE_FILES ?? kept().PLUMBLINE_FILES ?? join(dataFolder, 'files');
}

export function embeddedFolder(): string {
  return join(dataFolder, 'postgres');
}

/** The database that this checkout uses: DATABASE_URL's, else its own embedded one (started for this when it stands). */
export async function openSource(): Promise<Source> {
  const files = filesFolder();
  const given = process.env.DATABASE_URL;
  if (given) return { address: given, files, close: () => undefined };
  const folder = embeddedFolder();
  if (existsSync(join(folder, 'complete'))) {
    const server = await startPostgres({ folder, password: secrets().database });
    return {
      address: server.url('plumbline'),
      files,
      close: () => {
        if (!server.reused) server.stop();
      },
    };
  }
  const address = kept().DATABASE_URL;
  if (address) return { address, files, close: () => undefined };
  throw new Error(
    `There is no database to back up: set DATABASE_URL, or start once with npm start (${dataFolder}).`,
  );
}
