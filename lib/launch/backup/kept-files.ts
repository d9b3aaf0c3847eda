import { createHash } from 'node:crypto';
import { constants, createReadStream } from 'node:fs';
import { chown, copyFile, mkdir, readdir, readFile, rm, stat } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { pipeline } from 'node:stream/promises';

/** Smaller files are read whole: a server has a thousand of them. */
const AT_ONCE = 4 * 1024 * 1024;

export type KeptFile = { path: string; bytes: number; sha256: string };

/** Every file below a folder, by its path with slashes, in order. A file that went away meanwhile is left out. */
export async function listFiles(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .map((path) => path.split(sep).join('/'))
    .sort();
}

export async function listFolders(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isDirectory())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .map((path) => path.split(sep).join('/'))
    .sort();
}

export async function describeFile(folder: string, path: string): Promise<KeptFile> {
  const file = join(folder, path);
  const hash = createHash('sha256');
  const { size } = await stat(file);
  if (size < AT_ONCE) hash.update(await readFile(file));
  else await pipeline(createReadStream(file), hash);
  return { path, bytes: size, sha256: hash.digest('hex') };
}

/** Copies what `wanted` takes of a folder, empty folders too. */
export async function copyFiles(
  from: string,
  to: string,
  wanted: (path: string) => boolean = () => true,
): Promise<void> {
  await mkdir(to, { recursive: true });
  for (const path of await listFolders(from))
    if (wanted(path)) await mkdir(join(to, path), { recursive: true });
  for (const path of await listFiles(from)) if (wanted(path)) await copyOne(from, to, path);
}

export async function copyOne(from: string, to: string, path: string): Promise<void> {
  try {
    await copyFile(join(from, path), join(to, path), constants.COPYFILE_FICLONE);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error; // gone since it was listed: as the server allows
  }
}

/** What root wrote into somebody's folder becomes theirs: in compose the pages and workers that change it are not root. */
export async function giveToOwner(folder: string): Promise<void> {
  const { uid, gid } = await stat(folder);
  if (process.getuid?.() !== 0 || uid === 0) return;
  for (const path of [...(await listFolders(folder)), ...(await listFiles(folder))])
    await chown(join(folder, path), uid, gid);
}

/** Empties a folder and leaves it where it is: it may be a volume. */
export async function emptyFolder(folder: string): Promise<void> {
  for (const name of await readdir(folder)) await rm(join(folder, name), { recursive: true, force: true });
}
