import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { pool } from '#lib/db/client.ts';
import { isQueueReady } from '#lib/jobs/queue.ts';
import { isStopping } from '#lib/stopping.ts';

/** A balancer asks often: an answer after this is no answer. */
const PATIENCE_MS = 500;
/** What PostgreSQL says of a function and of a table that are not there. */
const NOT_THERE = new Set(['42883', '42P01']);

/** Whether this process can serve: not told to end, database there and at the newest migration, queue reachable. */
export async function isReady(): Promise<{ ready: boolean; missing: string[] }> {
  if (isStopping()) return { ready: false, missing: ['stopping'] };
  const level = migrationLevel();
  const parts: [string, Promise<boolean>][] = [
    ['database', level.then(() => true)],
    ['newest migration', level.then(isNewest)],
    ['queue', isQueueReady()],
  ];
  const answers = await Promise.all(parts.map(async ([name, part]) => ((await inTime(part)) ? null : name)));
  const missing = answers.filter((name) => name !== null);
  return { ready: missing.length === 0, missing };
}

/** Null where nothing was migrated: then the function is missing, or finds no table to read. */
async function migrationLevel(): Promise<string | null> {
  try {
    const { rows } = await pool().query<{ level: string | null }>('select migration_level() as level');
    return rows[0]?.level ?? null;
  } catch (error) {
    if (error instanceof Error && 'code' in error && NOT_THERE.has(String(error.code))) return null;
    throw error;
  }
}

async function isNewest(level: string | null): Promise<boolean> {
  const wanted = await newestMigration();
  return wanted === undefined || (level ?? '') >= wanted;
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
