import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { pool } from '#lib/db/client.ts';
import { isQueueReady } from '#lib/jobs/queue.ts';

/** A balancer asks often: an answer after this is no answer. */
const PATIENCE_MS = 500;

/** Whether this process can serve: database at the newest migration, queue reachable. */
export async function isReady(): Promise<{ ready: boolean; missing: string[] }> {
  const parts: [string, Promise<boolean>][] = [
    ['database at the newest migration', isDatabaseReady()],
    ['queue', isQueueReady()],
  ];
  const answers = await Promise.all(parts.map(async ([name, part]) => ((await inTime(part)) ? null : name)));
  const missing = answers.filter((name) => name !== null);
  return { ready: missing.length === 0, missing };
}

async function isDatabaseReady(): Promise<boolean> {
  const { rows } = await pool().query<{ level: string | null }>('select migration_level() as level');
  const wanted = await newestMigration();
  return wanted === undefined || (rows[0]?.level ?? '') >= wanted;
}

async function newestMigration(): Promise<string | undefined> {
  const names = await readdir(join(process.cwd(), 'prisma/migrations')).catch(() => []);
  return names
    .filter((name) => /^\d/.test(name))
    .sort()
    .at(-1);
}

async function inTime(part: Promise<boolean>): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<false>((done) => {
    timer = setTimeout(() => done(false), PATIENCE_MS);
  });
  try {
    return await Promise.race([part.catch(() => false), late]);
  } finally {
    clearTimeout(timer);
  }
}
