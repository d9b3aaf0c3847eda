import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { describeFile, type KeptFile, listFiles, listFolders } from './kept-files.ts';

const NAME = 'manifest.json';
const manifestSchema = z.object({
  format: z.literal(1),
  madeAt: z.iso.datetime(),
  /** `files`: a copy of a server's own files; `dump`: what pg_dump wrote. */
  way: z.enum(['files', 'dump']),
  /** Major version of the server. */
  server: z.number().int(),
  database: z.string(),
  /** Name of the newest migration in it. */
  migration: z.string(),
  tables: z.record(z.string(), z.object({ rows: z.number().int(), sum: z.string() })),
  /** Folders, also empty ones: a server does not start without some of them. */
  folders: z.array(z.string()),
  files: z.array(z.object({ path: z.string(), bytes: z.number().int(), sha256: z.string() })),
});
export type Manifest = z.infer<typeof manifestSchema>;

/** Describes every file of the backup and writes the manifest last: a folder without one is no backup. */
export async function writeManifest(
  folder: string,
  about: Omit<Manifest, 'format' | 'folders' | 'files'>,
): Promise<Manifest> {
  const files: KeptFile[] = [];
  for (const path of await listFiles(folder)) files.push(await describeFile(folder, path));
  const manifest: Manifest = { format: 1, ...about, folders: await listFolders(folder), files };
  await writeFile(join(folder, NAME), `${JSON.stringify(manifest, null, 1)}\n`, { mode: 0o600 });
  return manifest;
}

export async function readManifest(folder: string): Promise<Manifest> {
  const text = await readFile(join(folder, NAME), 'utf8').catch(() => undefined);
  if (text === undefined)
    throw new Error(
      `${folder} is no finished backup: it has no ${NAME}. Choose a folder that npm run backup named.`,
    );
  let stored: unknown;
  try {
    stored = JSON.parse(text);
  } catch {
    throw new Error(`${join(folder, NAME)} is damaged: it is not JSON. Choose another backup.`);
  }
  const parsed = manifestSchema.safeParse(stored);
  if (parsed.success) return parsed.data;
  const where = parsed.error.issues[0]?.path.join('.') ?? '';
  throw new Error(`${join(folder, NAME)} is damaged at "${where}". Choose another backup.`);
}

/** Files that are missing or are not as they were written, a sentence each. */
export async function damagedFiles(folder: string, manifest: Manifest): Promise<string[]> {
  const there = new Set(await listFiles(folder));
  const damaged: string[] = [];
  for (const file of manifest.files) {
    if (!there.has(file.path)) {
      damaged.push(`${file.path} is missing`);
      continue;
    }
    const now = await describeFile(folder, file.path);
    if (now.bytes !== file.bytes) damaged.push(`${file.path} has ${now.bytes} bytes, not ${file.bytes}`);
    else if (now.sha256 !== file.sha256) damaged.push(`${file.path} is not as it was written`);
  }
  return damaged;
}
