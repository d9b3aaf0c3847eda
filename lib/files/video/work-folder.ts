import { mkdtemp, readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const BEGINS = 'plumbline-clip-';
/** Longer than a film is looked through. */
const LEFT_MS = 60 * 60_000;

/** A folder of this worker's own for one film; whoever asks removes it. */
export function makeWorkFolder(): Promise<string> {
  return mkdtemp(join(tmpdir(), BEGINS));
}

/** Removes what workers left that were killed over a film. Ages are told by the file system's own clock. */
export async function clearWorkFolders(): Promise<void> {
  const mark = await makeWorkFolder();
  try {
    const { mtimeMs: now } = await stat(mark);
    for (const name of await readdir(tmpdir())) {
      if (!name.startsWith(BEGINS)) continue;
      const folder = join(tmpdir(), name);
      const left = await stat(folder).catch(() => undefined);
      if (left && left.mtimeMs < now - LEFT_MS) await rm(folder, { recursive: true, force: true });
    }
  } finally {
    await rm(mark, { recursive: true, force: true });
  }
}
