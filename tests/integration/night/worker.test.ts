import { randomUUID } from 'node:crypto';
import { afterAll, describe, expect, it } from 'vitest';
import type { QueuePlace } from '#lib/jobs/backend.ts';
import { closeQueues, kickOutbox, placeQueuesAt } from '#lib/jobs/queue.ts';
import { runNightsNow } from '#lib/usecases/run-nights-now.ts';
import { makeTestTeam, ownerQuery } from '#tests/integration/support/database.ts';
import { startWorker } from '#worker/start.ts';
import { checkIn, makeRung, trainingClient } from './arrange.ts';
import { findRedis } from './redis.ts';

const redis = await findRedis(12);
if (!redis)
  process.stdout.write(
    'The Redis half of the worker tests could not run: no REDIS_URL and no redis-server.\n',
  );
afterAll(() => redis?.stop());

const places: QueuePlace[] = [{ kind: 'postgres', url: process.env.APP_DATABASE_URL ?? '' }];
if (redis) places.push({ kind: 'redis', url: redis.url });

/** The local date in UTC, some days from now. */
const day = (offset: number) => new Date(Date.now() + offset * 86_400_000).toISOString().slice(0, 10);

describe.each(places)('the worker on $kind', (place) => {
  it('runs what is owed at its start, night after night in their order, then what a check-in leaves in the outbox', async () => {
    const team = await makeTestTeam();
    const rungId = await makeRung(team);
    const clientId = await trainingClient(team, { rungId, from: day(-9), to: day(-1) });
    await ownerQuery(`update client set joined_at = $2 where id = $1`, [clientId, `${day(-5)}T12:00:00Z`]);

    const stop = await startWorker(place);
    try {
      const nights = await eventually(
        () =>
          ownerQuery<{ day: string }>(
            'select local_date::text as day from night_client where client_id = $1 and done_at is not null order by done_at',
            [clientId],
          ),
        (rows) => rows.at(-1)?.day === day(-1) || rows.at(-1)?.day === day(-2),
      );
      expect(nights.map((night) => night.day)).toEqual([...nights.map((night) => night.day)].sort());
      expect(nights[0]?.day).toBe(day(-5));

      const checkInId = await checkIn(team, clientId, { date: day(0), rungId, pain: 8 });
      await ownerQuery(
        `insert into outbox (team_id, kind, client_id, dedupe_key, body) values ($1, 'after-check-in', $2, $3, '{}')`,
        [team.teamId, clientId, checkInId],
      );
      await kickOutbox();
      await eventually(
        () => ownerQuery(`select 1 from reason where client_id = $1 and kind = 'pain-high'`, [clientId]),
        (rows) => rows.length === 1,
      );
      const [outbox] = await ownerQuery<{ sent: boolean }>(
        'select sent_at is not null as sent from outbox where team_id = $1',
        [team.teamId],
      );
      expect(outbox).toEqual({ sent: true });
    } finally {
      await stop();
    }
  });

  it('leaves what was queued while it was away, and does it when it comes back', async () => {
    const team = await makeTestTeam();
    const rungId = await makeRung(team);
    const clientId = await trainingClient(team, { rungId, from: day(-3), to: day(-3) });
    await placeQueuesAt(place);
    expect(await runNightsNow(team.scope, {}, new Date())).toEqual({ clients: 1 });
    await closeQueues();
    const stop = await startWorker(place);
    try {
      await eventually(
        () =>
          ownerQuery('select 1 from night_client where client_id = $1 and done_at is not null', [clientId]),
        (rows) => rows.length >= 2,
      );
    } finally {
      await stop();
    }
  });
});

it('somebody else’s client is not there', async () => {
  const team = await makeTestTeam();
  await expect(runNightsNow(team.scope, { clientId: randomUUID() }, new Date())).rejects.toMatchObject({
    code: 'not-found',
  });
});

async function eventually<T>(look: () => Promise<T>, until: (seen: T) => boolean): Promise<T> {
  for (let tries = 0; tries < 150; tries += 1) {
    const seen = await look();
    if (until(seen)) return seen;
    await new Promise((done) => setTimeout(done, 100));
  }
  throw new Error('it did not happen within 15 s');
}
