import { type ChildProcess, spawn } from 'node:child_process';
import { afterAll, expect, it } from 'vitest';
import { closeQueues, enqueue, placeQueuesAt } from '#lib/jobs/queue.ts';
import { tickJob } from '#lib/jobs/tick.ts';
import { makeTestClient, makeTestTeam, ownerQuery } from '#tests/integration/support/database.ts';
import { findRedis } from './redis.ts';

const TEAMS = 20;
const redis = await findRedis(13);
if (!redis) process.stdout.write('Two workers could not be tried: no REDIS_URL and no redis-server.\n');
afterAll(() => redis?.stop());

it.runIf(redis)(
  'two worker processes share a night, and each client has it once',
  async () => {
    const url = redis?.url ?? '';
    const workers = await Promise.all([startWorker(url), startWorker(url)]);
    try {
      const teamIds: string[] = [];
      for (let at = 0; at < TEAMS; at += 1) {
        const team = await makeTestTeam(`Team ${at}`);
        await makeTestClient(team, { zone: 'UTC', standing: 'paused' }); // owes nothing yet
        teamIds.push(team.teamId);
      }
      await ownerQuery(
        `update client set joined_at = now() - interval '30 hours', standing = 'in-training' where team_id = any($1)`,
        [teamIds],
      );
      await placeQueuesAt({ kind: 'redis', url });
      await enqueue(tickJob, {});
      await expect
        .poll(() => ownerQuery('select 1 from night_client where done_at is not null and attempts = 1'), {
          timeout: 60_000,
        })
        .toHaveLength(await owedNow());
      const done = workers.map(({ batches }) => batches());
      expect(done.reduce((sum, some) => sum + some, 0)).toBe(await owedNow());
      // A fair half each; a fifth of it at least, whatever else the machine does.
      for (const some of done) expect(some).toBeGreaterThanOrEqual(TEAMS / 10);
    } finally {
      await closeQueues();
      await Promise.all(workers.map(({ child }) => end(child)));
    }
  },
  150_000,
);

/** Nights that are over where everybody lives: one or two each, by the hour of the day. */
async function owedNow(): Promise<number> {
  const [row] = await ownerQuery<{ nights: number }>(
    `select sum((wall_clock(zone, now()) - interval '3 hours')::date - wall_clock(zone, joined_at)::date)::int as nights from client`,
  );
  return row?.nights ?? 0;
}

type Started = { child: ChildProcess; batches: () => number };

/** A process as `npm start` starts it; its log tells which batches it did. */
function startWorker(url: string): Promise<Started> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'worker/main.ts'], {
    env: { ...process.env, REDIS_URL: url, PLUMBLINE_LOG: 'info', VITEST: undefined },
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
  });
  let log = '';
  return new Promise((done, fail) => {
    child.once('exit', (code) => fail(new Error(`a worker ended with ${code}: ${log.slice(-500)}`)));
    child.stdout?.on('data', (text: Buffer) => {
      log += text.toString();
      if (log.includes('worker ready'))
        done({ child, batches: () => log.split('"msg":"night batch"').length - 1 });
    });
  });
}

function end(child: ChildProcess): Promise<void> {
  return new Promise((done) => {
    child.removeAllListeners('exit');
    child.once('exit', () => done());
    child.kill('SIGTERM');
  });
}
