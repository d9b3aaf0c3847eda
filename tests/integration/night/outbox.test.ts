import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { QueuePlace } from '#lib/jobs/backend.ts';
import { closeQueues, placeQueuesAt, queue } from '#lib/jobs/queue.ts';
import { deliverOutbox } from '#lib/usecases/deliver-outbox.ts';
import { isReady } from '#lib/usecases/is-ready.ts';
import { prepareQueue } from '#lib/usecases/prepare-queue.ts';
import { makeTestClient, makeTestTeam, ownerQuery } from '#tests/integration/support/database.ts';

const here: QueuePlace = { kind: 'postgres', url: process.env.APP_DATABASE_URL ?? '' };
const nowhere: QueuePlace = { kind: 'redis', url: 'redis://127.0.0.1:1' };
const now = new Date('2026-03-01T12:00:00Z');

beforeAll(prepareQueue);
afterAll(closeQueues);

async function leaveCheckIn(
  kind = 'after-check-in',
): Promise<{ teamId: string; clientId: string; checkInId: string }> {
  const team = await makeTestTeam();
  const { clientId } = await makeTestClient(team);
  const checkInId = randomUUID();
  await ownerQuery(
    'insert into outbox (team_id, kind, client_id, dedupe_key, body) values ($1, $2, $3, $4, $5)',
    [team.teamId, kind, clientId, checkInId, JSON.stringify({ checkInId })],
  );
  return { teamId: team.teamId, clientId, checkInId };
}

const outboxOf = (teamId: string) =>
  ownerQuery<{ sent_at: Date | null; attempts: number; last_error: string | null }>(
    'select sent_at, attempts, last_error from outbox where team_id = $1',
    [teamId],
  );

it('keeps what cannot be handed on, says why, and hands it on later, once', async () => {
  const left = await leaveCheckIn();
  await placeQueuesAt(nowhere);
  expect(await deliverOutbox(now)).toBe(0);
  expect(await outboxOf(left.teamId)).toEqual([
    { sent_at: null, attempts: 1, last_error: 'the queue does not answer' },
  ]);
  await placeQueuesAt(here);
  const before = (await queue('day').getJobCounts('waiting')).waiting ?? 0;
  expect(await deliverOutbox(now)).toBe(1);
  expect(await deliverOutbox(now)).toBe(0);
  expect(await outboxOf(left.teamId)).toEqual([{ sent_at: now, attempts: 2, last_error: null }]);
  expect((await queue('day').getJobCounts('waiting')).waiting).toBe(before + 1);
});

it('hands a row on once when two deliver at the same moment', async () => {
  await leaveCheckIn();
  await placeQueuesAt(here);
  const delivered = await Promise.all([deliverOutbox(now), deliverOutbox(now), deliverOutbox(now)]);
  expect(delivered.reduce((sum, each) => sum + each, 0)).toBe(1);
});

it('leaves mail to its own sender', async () => {
  const left = await leaveCheckIn('mail');
  await placeQueuesAt(here);
  expect(await deliverOutbox(now)).toBe(0);
  expect((await outboxOf(left.teamId))[0]?.sent_at).toBeNull();
});

it('is ready when database and queue answer, and names what does not', async () => {
  await placeQueuesAt(here);
  expect(await isReady()).toEqual({ ready: true, missing: [] });
  await placeQueuesAt(nowhere);
  expect(await isReady()).toEqual({ ready: false, missing: ['queue'] });
  await placeQueuesAt(here);
  await ownerQuery('alter table _prisma_migrations rename to elsewhere');
  expect(await isReady()).toEqual({ ready: false, missing: ['database at the newest migration'] });
  await ownerQuery('alter table elsewhere rename to _prisma_migrations');
});
