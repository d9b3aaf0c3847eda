import { randomUUID } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { folderStore } from '#lib/files/folder-store.ts';

const folder = mkdtempSync(join(tmpdir(), 'plumbline-files-'));
afterAll(() => rmSync(folder, { recursive: true }));
const store = folderStore(folder);
const aKey = () => `${randomUUID()}/${randomUUID()}.jpg`;

it('keeps, reads and removes; what is not there is undefined, removing it twice is no fault', async () => {
  const key = aKey();
  await store.write(key, Buffer.from('one'));
  await store.write(key, Buffer.from('two'));
  expect(Buffer.from((await store.read(key)) ?? []).toString()).toBe('two');
  expect(readdirSync(join(folder, key.slice(0, 36)))).toHaveLength(1);
  await store.remove(key);
  await store.remove(key);
  expect(await store.read(key)).toBeUndefined();
});

it.each(['../outside.jpg', `${randomUUID()}/../../x.jpg`, `/etc/${randomUUID()}.jpg`, ''])(
  'refuses the key %j',
  async (key) => {
    await expect(async () => store.read(key)).rejects.toThrow(/key of a file/);
    await expect(async () => store.write(key, Buffer.from('x'))).rejects.toThrow(/key of a file/);
  },
);
