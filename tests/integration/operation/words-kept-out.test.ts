import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, inject, it, vi } from 'vitest';
import type { QueuePlace } from '#lib/jobs/backend.ts';
import { closeQueues, kickNotices, kickOutbox, placeQueuesAt } from '#lib/jobs/queue.ts';
import { addNote } from '#lib/usecases/add-note.ts';
import { answerQuestion } from '#lib/usecases/answer-question.ts';
import { addNoticePhone } from '#lib/usecases/choose-notices.ts';
import { prepareQueue } from '#lib/usecases/prepare-queue.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { anotherPhone, aPhone, aTraining } from '#tests/integration/check-in/arrange.ts';
import { leadOf } from '#tests/integration/clients/support.ts';
import { findRedis } from '#tests/integration/night/redis.ts';
import { openMailServer } from '#tests/integration/notices/mail-server.ts';
import { openPushService } from '#tests/integration/notices/push-service.ts';
import { ownerQuery } from '#tests/integration/support/database.ts';
import { recordQueue } from './queue-recorder.ts';
import { startRealWorker } from './real-worker.ts';

// Whole processes and servers: a busy machine takes minutes for what takes seconds.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

/** What people wrote, and who they are: words that nothing of ours can contain. */
const WROTE = {
  note: 'Zwirbelknochen',
  question: 'Quappelgelenk',
  answer: 'Ratschenkraut',
  own: 'Murmelsehne',
};
const PEOPLE = { name: 'Xanthopygos', email: 'wuppertram@knarz.example', zone: 'Nirgends/Pfifferling' };

const redis = await findRedis(13);
if (!redis)
  process.stdout.write('The Redis half of the words test could not run: no REDIS_URL and no redis-server.\n');
const places: QueuePlace[] = [{ kind: 'postgres', url: process.env.APP_DATABASE_URL ?? '' }];
if (redis) places.push({ kind: 'redis', url: redis.url });
const mails = await openMailServer();
const pushes = await openPushService();
process.env.PLUMBLINE_PUSH_LOCAL = '1';

beforeAll(prepareQueue);
afterAll(async () => {
  await closeQueues();
  await mails.close();
  await pushes.close();
  redis?.stop();
});

describe.each(places)('with the queue in $kind', (place) => {
  it('logs and queue carry ids: nothing of what people wrote, no name, no address, no secret', async () => {
    await placeQueuesAt(place);
    const recorder = await recordQueue(place);
    const { clientId, checkInId, poisoned } = await peopleWhoWrite();
    const worker = await startRealWorker({
      ...(place.kind === 'redis' && { REDIS_URL: place.url }),
      PLUMBLINE_MAIL_SERVER: mails.address,
      PLUMBLINE_MAIL_FROM: 'Plumbline <training@low-wall.example>',
      PLUMBLINE_PUSH_LOCAL: '1',
    });
    const is = (sql: string, id: string) => async () => (await ownerQuery(sql, [id])).length > 0;
    const patient = { timeout: 120_000, interval: 200 };
    await expect
      .poll(is('select 1 from night_client where client_id = $1 and done_at is not null', clientId), patient)
      .toBe(true);
    await expect
      .poll(
        is(
          `select 1 from outbox where kind = 'after-check-in' and client_id = $1 and sent_at is not null`,
          clientId,
        ),
        patient,
      )
      .toBe(true);
    await expect
      .poll(is(`select 1 from outbox where client_id = $1 and last_error is not null`, poisoned), patient)
      .toBe(true);
    await expect.poll(() => mails.taken.length, patient).toBeGreaterThan(0);
    await expect.poll(() => pushes.pushed.length, patient).toBeGreaterThan(0);
    const queued = await recorder.all();
    await recorder.close();
    const ended = await worker.stop();
    expect(ended.code).toBe(0);
    const logged = worker.said();

    // What should be found is: ids, and that everything ran.
    expect(queued).toContain(checkInId);
    expect(logged).toContain('night batch');
    expect(logged).toContain('job failed');
    const wrote = Object.values(WROTE);
    const people = Object.values(PEOPLE).flatMap((each) => each.split('@'));
    const secrets = [inject('secret'), new URL(process.env.APP_DATABASE_URL ?? '').password];
    expect(found(logged, [...wrote, ...people, ...secrets])).toEqual([]);
    expect(found(queued, [...wrote, ...people, ...secrets])).toEqual([]);

    const outbox = await ownerQuery<{ kind: string; row: string }>(
      'select kind, outbox::text as row from outbox',
    );
    const text = outbox.map(({ row }) => row).join('\n');
    expect(found(text, wrote)).toEqual([]);
    const ofChecks = outbox.filter(({ kind }) => kind === 'after-check-in').map(({ row }) => row);
    expect(ofChecks.length).toBeGreaterThan(1);
    expect(found(ofChecks.join('\n'), people)).toEqual([]);
    const mailed = mails.taken.map(({ raw }) => raw).join('\n');
    expect(found(mailed, wrote)).toEqual([]);
    expect(mailed).toContain(PEOPLE.email.split('@')[1] ?? '-'); // the mail server has to know to whom
  });
});

/** The words of the list that stand in a text, also cut into quoted-printable lines. */
function found(text: string, words: readonly string[]): string[] {
  const whole = text.replaceAll('=\r\n', '');
  expect(whole.length).toBeGreaterThan(100);
  return words.filter((word) => whole.includes(word));
}

async function peopleWhoWrite() {
  mails.taken.length = 0;
  pushes.pushed.length = 0;
  const phone = await aPhone(PEOPLE.name);
  const { clientId, actor, team } = phone;
  const yesterday = new Date(Date.now() - 30 * 3_600_000);
  await ownerQuery('update client set email = $2, joined_at = $3, invited_at = $3 where id = $1', [
    clientId,
    PEOPLE.email,
    yesterday,
  ]);
  await ownerQuery('insert into client_notice (team_id, client_id, mail) values ($1, $2, true)', [
    team.teamId,
    clientId,
  ]);
  await addNoticePhone(actor, pushes.phone(randomUUID()), new Date());
  const now = new Date();
  const body = aTraining(phone, {
    date: now.toISOString().slice(0, 10),
    zone: 'UTC',
    words: `The ${WROTE.note} hurts.`,
    question: `Is it the ${WROTE.question}?`,
    pain: [{ region: 'wrist-back', side: 'left', moment: 'after', value: 8, kind: 'joint', usual: false }],
  });
  await submitCheckIn(actor, body, now);
  const [question] = await ownerQuery<{ id: string }>('select id from question where client_id = $1', [
    clientId,
  ]);
  const answer = { clientId, questionId: question?.id ?? '', text: `Rest, and ${WROTE.answer}.` };
  await answerQuestion(leadOf(team), answer, now);
  await addNote(leadOf(team), { clientId, text: `I think of the ${WROTE.own}.` }, now);

  const other = await anotherPhone(team, PEOPLE.name);
  const broken = aTraining({ ...phone, ...other }, { date: body.date, zone: 'UTC', words: WROTE.note });
  await submitCheckIn(other.actor, broken, now);
  await ownerQuery('update client set zone = $2 where id = $1', [other.clientId, PEOPLE.zone]); // stops its checks
  await kickOutbox();
  await kickNotices(team.teamId, randomUUID());
  return { clientId, checkInId: body.id, poisoned: other.clientId };
}
