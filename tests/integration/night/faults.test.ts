import { spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { runFaults } from '#tests/faults/run-faults.ts';
import { diskFull } from '#tests/faults/scenarios/full.ts';
import { killed } from '#tests/faults/scenarios/nights.ts';

// The short form of `npm run test:faults`: real processes on a PostgreSQL and a Redis of their own, two faults of the
// fifteen, few clients and kills.
const redisServer = process.env.REDIS_SERVER ?? which('redis-server');
const FAULTS = [
  { ...killed, kinds: [redisServer ? 'redis' : 'postgres'] as const },
  { ...diskFull, kinds: ['postgres'] as const },
];

function which(name: string): string | undefined {
  const found = spawnSync('sh', ['-c', `command -v ${name}`], { encoding: 'utf8' });
  return found.status === 0 ? found.stdout.trim() : undefined;
}

it('workers killed, disks full: everything as undisturbed', async () => {
  const rows = await runFaults({ faults: FAULTS, sizes: { clients: 16, kills: 2 }, seed: 1, redisServer });
  expect(rows.filter((row) => row.failure !== null)).toEqual([]);
  expect(rows.length).toBe(2);
}, 300_000);
