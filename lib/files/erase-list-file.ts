import { appendFile, mkdir, readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { env } from '#lib/config/env.ts';
import { type EraseLine, eraseLineSchema, parseEraseList } from '#lib/schemas/erase-list.ts';

/** Beside the pictures and outside the database, so that a database from a backup can be made to forget again. */
export const ERASE_LIST_NAME = 'erase-list.jsonl';

/** Adds a line: ids and times, no name. */
export async function appendToEraseList(
  added: EraseLine,
  folder: string = env().PLUMBLINE_FILES,
): Promise<void> {
  await mkdir(resolve(folder), { recursive: true, mode: 0o700 });
  const line = `${JSON.stringify(eraseLineSchema.parse(added))}\n`;
  await appendFile(join(resolve(folder), ERASE_LIST_NAME), line, { mode: 0o600, flush: true });
}

/** Every line, oldest first; none where nothing was ever deleted. */
export async function readEraseListFile(folder: string = env().PLUMBLINE_FILES): Promise<EraseLine[]> {
  try {
    return parseEraseList(await readFile(join(resolve(folder), ERASE_LIST_NAME), 'utf8'));
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return [];
    throw error;
  }
}
