import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import type { QueuePlace } from '#lib/jobs/backend.ts';
import { closeQueues, placeQueuesAt, queue } from '#lib/jobs/queue.ts';
import { prepareQueue } from '#lib/usecases/prepare-queue.ts';
import { makeTestClient, makeTestTeam, ownerQuery } from '#tests/integration/support/database.ts';
import { handleTick } from '#worker/handlers/tick.ts';
import { keepSchedule } from '#worker/schedule.ts';

const here: QueuePlace = { kind: 'postgres', url: process.env.APP_DATABASE_URL ?? '' };

beforeAll(async () => {
  await prepareQueue();
  await placeQueuesAt(here);
});
afterAll(closeQueues);

const waiting = async (name: 'day' | 'night') => (await queue(name).getJobCounts('waiting')).waiting;

it('a step of the tick that fails keeps the nights from nothing, and is said', async () => {
  const team = await makeTestTeam();
  await makeTestClient(team, { zone: 'UTC' });
  await ownerQuery('alter table standing_change rename column from_date to from_date_away');
  await ownerQuery('alter table push_subscription rename to push_subscription_away');
  try {
    await expect(handleTick({})).rejects.toThrow(/could not do .*applyDueStandings/);
  } finally {
    await ownerQuery('alter table push_subscription_away rename to push_subscription');
    await ownerQuery('alter table standing_change rename column from_date_away to from_date');
  }
  await expect(handleTick({})).resolves.toBeUndefined();
  expect(await waiting('night')).toBeGreaterThan(0);
});

it('a schedule that is lost with everything in the queue is written again, and the tick with it', async () => {
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
  const leave = await keepSchedule();
  try {
    expect(await queue('day').getJobSchedulersCount()).toBe(1);
    for (const table of ['job', 'scheduler']) await ownerQuery(`delete from bullmq.${table}`);
    expect(await queue('day').getJobSchedulersCount()).toBe(0);
    await vi.advanceTimersByTimeAsync(10_000);
    await expect.poll(() => queue('day').getJobSchedulersCount(), { timeout: 10_000 }).toBe(1);
    // The repeat's first run, and one for what was queued before.
    await expect.poll(() => waiting('day'), { timeout: 10_000 }).toBe(2);
  } finally {
    leave();
    vi.useRealTimers();
  }
});
