import pg from 'pg';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { closeQueues, kickOutbox, placeQueuesAt } from '#lib/jobs/queue.ts';
import { freePort } from '#lib/launch/postgres.mjs';
import { prepareQueue } from '#lib/usecases/prepare-queue.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { aPhone, aTraining } from '#tests/integration/check-in/arrange.ts';
import { ownerQuery } from '#tests/integration/support/database.ts';
import { startRealWorker } from './real-worker.ts';

// Whole processes and servers: a busy machine takes minutes for what takes seconds.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

/** Orchestrators give thirty seconds. */
const GRACE_MS = 25_000;
const TOKEN = 'a-token-for-metrics-of-this-test';

beforeAll(async () => {
  await placeQueuesAt({ kind: 'postgres', url: process.env.APP_DATABASE_URL ?? '' });
  await prepareQueue();
});
afterAll(closeQueues);

it('says how it is, and finishes what it has in hand when it is told to end', async () => {
  const phone = await aPhone('Held');
  const now = new Date();
  await submitCheckIn(
    phone.actor,
    aTraining(phone, { date: now.toISOString().slice(0, 10), zone: 'UTC' }),
    now,
  );
  // Somebody else has this client in hand: the job waits in the middle of its work.
  const holder = new pg.Client({ connectionString: process.env.DATABASE_URL });
  await holder.connect();
  await holder.query('begin');
  await holder.query('select pg_advisory_xact_lock(hashtextextended($1, 7))', [
    phone.team.teamId + phone.clientId,
  ]);
  const port = await freePort();
  const worker = await startRealWorker({
    PLUMBLINE_WORKER_PORT: String(port),
    PLUMBLINE_METRICS_TOKEN: TOKEN,
  });
  const ask = async (path: string, token?: string) => {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, {
      headers: token ? { authorization: `Bearer ${token}` } : {},
    });
    return { status: answer.status, text: await answer.text() };
  };
  expect(await ask('/livez')).toEqual({ status: 200, text: 'live\n' });
  expect(await ask('/readyz')).toEqual({ status: 200, text: 'ready\n' });
  expect((await ask('/metrics')).status).toBe(401);
  expect((await ask('/metrics', `${TOKEN}x`)).status).toBe(401);
  const { status, text } = await ask('/metrics', TOKEN);
  expect(status).toBe(200);
  expect(text).toContain('plumbline_up{part="queue"} 1');
  expect(text).toContain('plumbline_outbox_waiting{kind="after-check-in"} 1');
  expect(text).toMatch(/^plumbline_nights_owed \d+$/m);
  expect(text).not.toContain(phone.clientId);

  await kickOutbox();
  const isHeld = async () =>
    (await ownerQuery(`select 1 from pg_locks where locktype = 'advisory' and not granted`)).length > 0;
  await expect.poll(isHeld, { timeout: 20_000 }).toBe(true);
  const ended = worker.stop();
  await expect
    .poll(() => ask('/readyz').catch(() => 'closed'), { timeout: 5_000 })
    .toEqual({
      status: 503,
      text: 'not ready: stopping\n',
    });
  await holder.query('commit');
  await holder.end();
  const { code, ms } = await ended;
  expect(code).toBe(0);
  expect(ms).toBeLessThan(GRACE_MS);
  const rows = await ownerQuery('select 1 from outbox where client_id = $1 and sent_at is not null', [
    phone.clientId,
  ]);
  expect(rows).toHaveLength(1);
});
