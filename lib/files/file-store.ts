import { randomUUID } from 'node:crypto';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { env } from '#lib/config/env.ts';

/** Where pictures lie outside the database. Another place (a bucket) needs these three and nothing else. */
export type FileStore = {
  write: (key: string, bytes: Uint8Array) => Promise<void>;
  /** Undefined: no such file. */
  read: (key: string) => Promise<Uint8Array | undefined>;
  remove: (key: string) => Promise<void>;
};

/** `team/picture.ext`, both ids: a key can point at nothing outside the folder. */
const KEY = /^[0-9a-f-]{36}\/[0-9a-f-]{36}\.[a-z]{3,4}$/;

/** Files in a folder, written whole or not at all. */
export function folderStore(folder: string): FileStore {
  const pathOf = (key: string) => {
    if (!KEY.test(key)) throw new Error('a key of a file is not "team id/picture id.ext"');
    return join(folder, key);
  };
  return {
    write: async (key, bytes) => {
      const path = pathOf(key);
      const unfinished = `${path}.${randomUUID()}.new`;
      await mkdir(dirname(path), { recursive: true, mode: 0o700 });
      try {
        await writeFile(unfinished, bytes, { mode: 0o600 });
        await rename(unfinished, path);
      } catch (error) {
        await rm(unfinished, { force: true });
        throw error;
      }
    },
    read: async (key) => {
      try {
        return await readFile(pathOf(key));
      } catch (error) {
        if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined;
        throw error;
      }
    },
    remove: (key) => rm(pathOf(key), { force: true }),
  };
}

/** The store that the environment names: PLUMBLINE_FILES, a folder. */
export function fileStore(): FileStore {
  return folderStore(resolve(env().PLUMBLINE_FILES));
}
