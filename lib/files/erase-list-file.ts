import { appendFile, mkdir, readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { z } from 'zod';
import { env } from '#lib/config/env.ts';

/** Beside the pictures and outside the database, so that a database from a backup can be made to forget again. */
export const ERASE_LIST_NAME = 'erase-list.jsonl';

const line = z.object({
  teamId: z.uuid(),
  clientId: z.uuid(),
  receipt: z.string(),
  origin: z.string(),
  askedAt: z.iso.datetime(),
  erasedAt: z.iso.datetime(),
});
type Line = z.infer<typeof line>;

function pathOfList(folder: string): string {
  return join(resolve(folder), ERASE_LIST_NAME);
}

/** Adds a line: ids and times, no name. */
export async function appendToEraseList(added: Line, folder: string = env().PLUMBLINE_FILES): Promise<void> {
  await mkdir(resolve(folder), { recursive: true, mode: 0o700 });
  await appendFile(pathOfList(folder), `${JSON.stringify(line.parse(added))}\n`, {
    mode: 0o600,
    flush: true,
  });
}

/** Every line, oldest first; none where nothing was ever deleted. A line cut short by a crash is left out. */
export async function readEraseListFile(folder: string = env().PLUMBLINE_FILES): Promise<Line[]> {
  let text: string;
  try {
    text = await readFile(pathOfList(folder), 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return [];
    throw error;
  }
  return text.split('\n').flatMap((each) => {
    try {
      const read = line.safeParse(JSON.parse(each));
      return read.success ? [read.data] : [];
    } catch {
      return [];
    }
  });
}
