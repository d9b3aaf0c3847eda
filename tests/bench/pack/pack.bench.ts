import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import pg from 'pg';
import { appUrl } from '#lib/launch/migrate.mjs';
import { startPostgres } from '#lib/launch/postgres.mjs';
import type { Bench, BenchRow } from '../harness.ts';
import { type Filled, fillClient } from './fill-client.ts';

const root = join(import.meta.dirname, '../../..');
const SECRET = 'only-for-a-bench-that-nobody-else-can-reach';
const YEARS = 10;
type Made = { seconds: number; cpuSeconds: number; peakMb: number; bytes: number };

/** The product's own code in one file, as the web runs it: a compiler in the same process would be measured too. */
async function built(): Promise<string> {
  const folder = join(root, '.data/bench-pack');
  mkdirSync(folder, { recursive: true });
  const outfile = join(folder, 'make-packs.mjs');
  await build({
    entryPoints: [join(import.meta.dirname, 'make-packs.ts')],
    absWorkingDir: root,
    bundle: true,
    outfile,
    format: 'esm',
    platform: 'node',
    packages: 'external',
    logLevel: 'error',
  });
  return outfile;
}

type Place = { environment: NodeJS.ProcessEnv; db: pg.Client; stop: () => Promise<void> };

async function ownDatabase(): Promise<Place> {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-bench-'));
  const server = await startPostgres({ folder, password: 'only-for-this-bench' });
  const url = server.url('plumbline');
  const environment = {
    ...process.env,
    DATABASE_URL: url,
    APP_DATABASE_URL: appUrl(url, SECRET),
    PLUMBLINE_SECRET: SECRET,
    PLUMBLINE_FILES: join(folder, 'files'),
    PLUMBLINE_FIRST_PASSWORD: 'chalk-and-a-long-rope',
    NODE_ENV: 'production' as const,
  };
  const run = (...args: string[]) => execFileSync(process.execPath, args, { cwd: root, env: environment });
  run('lib/launch/migrate.mjs');
  run(
    '--import',
    'tsx',
    'prisma/make-team.ts',
    '--team',
    'Bench',
    '--name',
    'Lead',
    '--email',
    'lead@bench.example',
    '--zone',
    'Europe/Berlin',
  );
  const db = new pg.Client({ connectionString: url });
  await db.connect();
  return {
    environment,
    db,
    stop: async () => {
      await db.end();
      server.remove();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function rowsOf([one, two, empty]: [Made, Made, Made], filled: Filled, years: number): BenchRow[] {
  const sizes = `${years} years, ${filled.checkIns} check-ins, ${filled.sets} sets, ${(one.bytes / 2 ** 20).toFixed(1)} MiB`;
  const row = (
    name: string,
    value: number,
    reference: number,
    rest: Pick<BenchRow, 'unit' | 'must' | 'aim'>,
  ): BenchRow => ({
    name,
    value,
    reference,
    ratio: value / reference,
    better: 'lower',
    sizes: `${sizes}; reference: a client with nothing, in a process of its own`,
    ...rest,
  });
  const over = 'MiB more than an empty pack takes';
  return [
    row('pack time', one.seconds, empty.seconds, { unit: 's', must: '30 s', aim: '10 s' }),
    row('pack processor time', one.cpuSeconds, empty.cpuSeconds, { unit: 's', must: '30 s', aim: '10 s' }),
    row('pack memory', one.peakMb - empty.peakMb, empty.peakMb, {
      unit: over,
      must: '200 MiB',
      aim: '50 MiB',
    }),
    row('two at once, time', two.seconds, empty.seconds, { unit: 's', must: '60 s', aim: '-' }),
    row('two at once, memory', two.peakMb - empty.peakMb, empty.peakMb, {
      unit: over,
      must: '400 MiB',
      aim: '-',
    }),
  ];
}

export const packBench: Bench = {
  name: 'pack',
  what: 'time and memory of a handover pack of ten years, every part of it, alone and two at once',
  run: async (scale: number) => {
    const script = await built();
    const place = await ownDatabase();
    try {
      const filled = await fillClient(place.db, { name: 'Bench', years: YEARS * scale });
      const made = (clientId: string, count: number): Made =>
        JSON.parse(
          execFileSync(process.execPath, [script, filled.teamId, filled.memberId, clientId, String(count)], {
            cwd: root,
            env: place.environment,
            encoding: 'utf8',
          }),
        );
      return rowsOf(
        [made(filled.clientId, 1), made(filled.clientId, 2), made(filled.emptyId, 1)],
        filled,
        YEARS * scale,
      );
    } finally {
      await place.stop();
    }
  },
};
