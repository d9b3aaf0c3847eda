import {
  chownSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { rename } from 'node:fs/promises';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { closeDb } from '#lib/db/client.ts';
import { tableFigures } from '#lib/launch/backup/table-figures.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { type Group, makeGroup } from '#tests/integration/night/arrange.ts';
import { ownerQuery } from '#tests/integration/support/database.ts';
import { command, type OwnServer, openOwnServer } from './own-server.ts';

// Whole processes and servers: a busy machine takes minutes for what takes seconds.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let server: OwnServer;
let group: Group;
let folder: string;
const STILL = 'team/still-of-a-question';

beforeAll(async () => {
  server = await openOwnServer();
  group = await makeGroup();
  await night('2026-03-30', '2026-03-31T03:05:00Z');
  mkdirSync(join(server.folder, 'files', 'team'));
  writeFileSync(join(server.folder, 'files', STILL), 'a picture');
  folder = join(server.folder, 'kept');
});
afterAll(async () => {
  await closeDb();
  server.remove();
});

it('what was backed up and wiped is there again, and the next night says the same', async () => {
  const before = await figures();
  const backup = await command('backup', server.folder, folder);
  expect(backup).toEqual({ code: 0, said: expect.stringMatching(/^Backup in .*: \d+ tables with \d+ rows/) });
  const { tables } = JSON.parse(readFileSync(join(folder, 'manifest.json'), 'utf8'));
  expect(tables).toEqual(before);
  expect(before.reason?.rows).toBeGreaterThan(0);

  await night('2026-03-31', '2026-04-01T03:05:00Z');
  const undisturbed = await reasons();
  expect(undisturbed.length).toBeGreaterThan(before.reason?.rows ?? 0);
  await closeDb();
  server.wipe();
  // As in compose: what restores is root, the pages that will change and delete the pictures are not.
  const files = join(server.folder, 'files');
  mkdirSync(files);
  const isRoot = process.getuid?.() === 0;
  if (isRoot) chownSync(files, 1234, 1234);

  const restored = await command('restore', server.folder, folder);
  expect(restored).toEqual({ code: 0, said: expect.stringContaining('each counted and compared') });
  await server.start();
  expect(await figures()).toEqual(before);
  expect(readFileSync(join(files, STILL), 'utf8')).toBe('a picture');
  const owners = ['.', 'team', STILL].map((path) => statSync(join(files, path)).uid);
  expect(new Set(owners)).toEqual(new Set([isRoot ? 1234 : process.getuid?.()]));
  await night('2026-03-31', '2026-04-01T03:05:00Z');
  expect(await reasons()).toEqual(undisturbed);
});

it('replaces nothing, and keeps no half of a backup', async () => {
  const taken = await command('backup', server.folder, folder);
  expect(taken).toEqual({ code: 1, said: expect.stringContaining('is there already') });

  const again = await command('restore', server.folder, folder);
  expect(again.code).toBe(1);
  expect(again.said).toContain('holds pictures already');
  await rename(join(server.folder, 'files'), join(server.folder, 'files-away'));
  const second = await command('restore', server.folder, folder);
  expect(second.said).toMatch(/There is a database in .*already/);
  expect(await ownerQuery('select 1 from client')).toHaveLength(3);
});

it('names what is damaged and restores nothing of it', async () => {
  const file = join(folder, 'database/base', biggestOf(join(folder, 'database/base')));
  const bytes = readFileSync(file);
  bytes[8200] = (bytes[8200] ?? 0) ^ 1;
  writeFileSync(file, bytes);
  await closeDb();
  server.wipe();
  const refused = await command('restore', server.folder, folder);
  expect(refused.code).toBe(1);
  expect(refused.said).toMatch(/is damaged:\n {2}database\/base\/\S+ is not as it was written/);
  expect(existsSync(join(server.folder, 'postgres', 'complete'))).toBe(false);

  rmSync(join(folder, 'manifest.json'));
  expect((await command('restore', server.folder, folder)).said).toContain('is no finished backup');
});

async function night(localDate: string, now: string): Promise<void> {
  const { team, clientIds } = group;
  const done = await runNightBatch(team.scope, { localDate, clientIds }, new Date(now));
  expect(done).toEqual({ done: 3, failed: 0 });
}

/** All that a night says, without the ids that it draws. */
function reasons() {
  return ownerQuery(
    `select r.client_id, r.kind, r.subject_key, r.subject, r.level, r.points, r.tier, r.sentence, r.short, r.since, r.step,
       r.clears, r.evidence, r.working, r.state, r.clear_nights, r.raised_at, r.updated_at, r.closed_at,
       (select jsonb_agg(jsonb_build_array(e.at, e.night, e.what, e.level, e.body) order by e.at, e.what, e.body::text)
        from reason_event e where e.team_id = r.team_id and e.reason_id = r.id) as events,
       (select jsonb_agg(n.findings order by n.local_date) from night_client n where n.client_id = r.client_id) as findings
     from reason r order by r.client_id, r.kind, r.subject_key, r.raised_at`,
  );
}

async function figures() {
  const client = new pg.Client({ connectionString: process.env.DATABASE_URL });
  await client.connect();
  try {
    return await tableFigures(client);
  } finally {
    await client.end();
  }
}

function biggestOf(base: string): string {
  const found = readdirSync(base, { recursive: true, encoding: 'utf8' }).filter((path) =>
    /\/\d+$/.test(path),
  );
  const size = (path: string) => readFileSync(join(base, path)).length;
  return found.sort((a, b) => size(b) - size(a))[0] ?? '';
}
