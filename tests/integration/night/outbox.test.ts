import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import type { QueuePlace } from '#lib/jobs/backend.ts';
import { closeQueues, placeQueuesAt, queue } from '#lib/jobs/queue.ts';
import { checkAfterCheckIn } from '#lib/usecases/check-after-check-in.ts';
import { deliverOutbox } from '#lib/usecases/deliver-outbox.ts';
import { isReady } from '#lib/usecases/is-ready.ts';
import { prepareQueue } from '#lib/usecases/prepare-queue.ts';
import { makeTestClient, makeTestTeam, ownerQuery } from '#tests/integration/support/database.ts';

const here: QueuePlace = { kind: 'postgres', url: process.env.APP_DATABASE_URL ?? '' };
const nowhere: QueuePlace = { kind: 'redis', url: 'redis://127.0.0.1:1' };

beforeAll(prepareQueue);
beforeEach(() => ownerQuery('delete from outbox'));
afterAll(closeQueues);

async function leaveCheckIn(
  kind = 'after-check-in',
  ageSeconds = 0,
): Promise<{ teamId: string; clientId: string; checkInId: string }> {
  const team = await makeTestTeam();
  const { clientId } = await makeTestClient(team);
  const checkInId = randomUUID();
  await ownerQuery(
    `insert into outbox (team_id, kind, client_id, dedupe_key, body, created_at)
     values ($1, $2, $3, $4, $5, now() - interval '1 second' * $6)`,
    [team.teamId, kind, clientId, checkInId, JSON.stringify({ checkInId }), ageSeconds],
  );
  return { teamId: team.teamId, clientId, checkInId };
}

const outboxOf = (teamId: string) =>
  ownerQuery<{ sent_at: Date | null; attempts: number; last_error: string | null }>(
    'select sent_at, attempts, last_error from outbox where team_id = $1',
    [teamId],
  );

it('keeps what cannot be handed on, says why, and hands it on later, once', async () => {
  const left = await leaveCheckIn('after-check-in', 120);
  await placeQueuesAt(nowhere);
  expect(await deliverOutbox()).toBe(0);
  expect(await outboxOf(left.teamId)).toEqual([
    { sent_at: null, attempts: 1, last_error: 'the queue does not answer' },
  ]);
  await placeQueuesAt(here);
  const before = (await queue('day').getJobCounts('waiting')).waiting ?? 0;
  expect(await deliverOutbox()).toBe(1);
  expect(await deliverOutbox()).toBe(0);
  expect(await outboxOf(left.teamId)).toEqual([{ sent_at: null, attempts: 2, last_error: null }]);
  expect((await queue('day').getJobCounts('waiting')).waiting).toBe(before + 1);
});

it('hands a row on again whose job was lost with the queue, and is done once the checks were', async () => {
  const left = await leaveCheckIn();
  await placeQueuesAt(here);
  expect(await deliverOutbox()).toBe(1);
  expect(await deliverOutbox()).toBe(0); // handed a moment ago: its job may be at work
  await ownerQuery(`update outbox set created_at = now() - interval '1 minute' where team_id = $1`, [
    left.teamId,
  ]);
  expect(await deliverOutbox()).toBe(1);
  await checkAfterCheckIn(left, new Date());
  expect((await outboxOf(left.teamId))[0]?.sent_at).not.toBeNull();
  await ownerQuery(`update outbox set created_at = now() - interval '1 day' where team_id = $1`, [
    left.teamId,
  ]);
  expect(await deliverOutbox()).toBe(0);
});

it('keeps a check-in whose checks stop, with where and without what was told', async () => {
  const left = await leaveCheckIn();
  await ownerQuery(`update client set zone = 'Nowhere/Else' where id = $1`, [left.clientId]);
  await expect(checkAfterCheckIn(left, new Date())).rejects.toThrow();
  const [row] = await outboxOf(left.teamId);
  expect(row).toMatchObject({
    sent_at: null,
    last_error: expect.stringMatching(/^\w+ at lib\/[\w./-]+:\d+$/),
  });
});

it('hands a row on once when two deliver at the same moment', async () => {
  await leaveCheckIn();
  await placeQueuesAt(here);
  const delivered = await Promise.all([deliverOutbox(), deliverOutbox(), deliverOutbox()]);
  expect(delivered.reduce((sum, each) => sum + each, 0)).toBe(1);
});

it('leaves mail to its own sender', async () => {
  const left = await leaveCheckIn('mail');
  await placeQueuesAt(here);
  expect(await deliverOutbox()).toBe(0);
  expect((await outboxOf(left.teamId))[0]?.sent_at).toBeNull();
});

it('is ready when database and queue answer, and names what does not', async () => {
  await placeQueuesAt(here);
  expect(await isReady()).toEqual({ ready: true, missing: [] });
  await placeQueuesAt(nowhere);
  expect(await isReady()).toEqual({ ready: false, missing: ['queue'] });
  await placeQueuesAt(here);
  await ownerQuery('alter table _prisma_migrations rename to elsewhere');
  expect(await isReady()).toEqual({ ready: false, missing: ['newest migration'] });
  await ownerQuery('alter table elsewhere rename to _prisma_migrations');
});
