import { type ErasureLine, listErasures } from '#lib/db/erasures.ts';
import { readEraseListFile } from '#lib/files/erase-list-file.ts';
import { eraseClient, removeFilesLeft } from './erase-client.ts';

export type ErasuresApplied = {
  /** Lines of the list, each client once. */
  listed: number;
  /** Clients who had come back with the backup and are deleted again. */
  erased: number;
};

/**
 * After a backup was restored: deletes again whoever had been deleted before. The list is read from the database, from
 * the file beside the pictures, and from `lines` (such as the file as it was before the restore). Safe to repeat.
 */
export async function applyErasures(lines: readonly ErasureLine[] = []): Promise<ErasuresApplied> {
  const all = [...(await listErasures()), ...(await readEraseListFile()), ...lines];
  const each = new Map(all.map((line) => [`${line.teamId} ${line.clientId}`, line]));
  let erased = 0;
  for (const line of each.values()) if (await eraseClient(line)) erased += 1;
  await removeFilesLeft();
  return { listed: each.size, erased };
}
