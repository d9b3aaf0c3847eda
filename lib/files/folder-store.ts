import { randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, readdir, readFile, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Readable } from 'node:stream';
import { assertKey, assertStem } from './file-key.ts';
import type { Chunks, FileStore } from './store-types.ts';

/** Files in a folder, written whole or not at all. */
export function folderStore(folder: string): FileStore {
  const pathOf = (key: string) => {
    assertKey(key);
    return join(folder, key);
  };
  return {
    write: async (key, bytes) => void (await writeWhole(pathOf(key), [bytes])),
    writeFrom: async (key, chunks) => writeWhole(pathOf(key), chunks),
    read: async (key) => orUndefined(readFile(pathOf(key))),
    open: async (key, range) => {
      const handle = await orUndefined(open(pathOf(key), 'r'));
      if (!handle) return undefined;
      const bounds = range ? { start: range.first, end: range.last } : {};
      const stream = createReadStream('', { fd: handle, ...bounds });
      return Readable.toWeb(stream) as ReadableStream<Uint8Array>;
    },
    remove: async (key) => rm(pathOf(key), { force: true }),
    removeAll: async (stem, ending = '') => {
      assertStem(stem);
      const [at, begins] = [join(folder, dirname(stem)), `${basename(stem)}.`];
      for (const name of (await orUndefined(readdir(at))) ?? [])
        if (name.startsWith(begins) && name.endsWith(ending)) await rm(join(at, name), { force: true });
    },
  };
}

async function writeWhole(path: string, chunks: Chunks | Iterable<Uint8Array>): Promise<number> {
  const unfinished = `${path}.${randomUUID()}.new`;
  await mkdir(dirname(path), { recursive: true, mode: 0o700 });
  try {
    const written = await writeTo(unfinished, chunks);
    await rename(unfinished, path);
    return written;
  } catch (error) {
    await rm(unfinished, { force: true });
    throw error;
  }
}

async function writeTo(path: string, chunks: Chunks | Iterable<Uint8Array>): Promise<number> {
  const file = await open(path, 'wx', 0o600);
  let written = 0;
  try {
    for await (const chunk of chunks) {
      await file.writeFile(chunk);
      written += chunk.byteLength;
    }
  } finally {
    await file.close();
  }
  return written;
}

async function orUndefined<T>(asked: Promise<T>): Promise<T | undefined> {
  try {
    return await asked;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined;
    throw error;
  }
}
