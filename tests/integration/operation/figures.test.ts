import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { nightBatchJob } from '#lib/jobs/night-batch.ts';
import { closeQueues, enqueue, placeQueuesAt } from '#lib/jobs/queue.ts';
import { countedSubmit } from '#lib/usecases/counted-submit.ts';
import { operationFigures } from '#lib/usecases/operation-figures.ts';
import { prepareQueue } from '#lib/usecases/prepare-queue.ts';
import { aPhone, aTraining, NOW } from '#tests/integration/check-in/arrange.ts';
import { GET } from '../../../app/metrics/route.ts';

const TOKEN = 'a-token-for-metrics-of-this-test';
process.env.PLUMBLINE_METRICS_TOKEN = TOKEN;
const here = { kind: 'postgres', url: process.env.APP_DATABASE_URL ?? '' } as const;

beforeAll(async () => {
  await placeQueuesAt(here);
  await prepareQueue();
});
afterAll(closeQueues);

const figures = async () => (await operationFigures(new Date())).text;

it('counts check-ins by what became of them, and what waits in queues and outbox', async () => {
  const phone = await aPhone('Figures');
  const body = aTraining(phone);
  await countedSubmit(phone.actor, body, NOW);
  await expect(countedSubmit(phone.actor, { ...body, effort: 1 }, NOW)).rejects.toThrow();
  await enqueue(nightBatchJob, { teamId: randomUUID(), localDate: '2026-03-01', clientIds: [randomUUID()] });
  await new Promise((later) => setTimeout(later, 20));
  const text = await figures();
  expect(text).toContain('plumbline_submits_total{outcome="kept"} 1');
  expect(text).toContain('plumbline_submits_total{outcome="conflict"} 1');
  expect(text).toContain('plumbline_submit_seconds_count 2');
  expect(text).toContain('plumbline_queue_jobs{queue="night",state="waiting"} 1');
  expect(text).toContain('plumbline_outbox_waiting{kind="after-check-in"} 1');
  expect(text).toContain('plumbline_outbox_waiting{kind="mail"} 0');
  const age = /plumbline_queue_oldest_seconds\{queue="night"\} (\S+)/.exec(text)?.[1];
  expect(Number(age)).toBeGreaterThan(0.01);
  expect(Number(age)).toBeLessThan(60);
});

it('says which part does not answer, and still tells of the other', async () => {
  await placeQueuesAt({ kind: 'redis', url: 'redis://127.0.0.1:1' });
  const text = await figures();
  expect(text).toContain('plumbline_up{part="queue"} 0');
  expect(text).toContain('plumbline_up{part="database"} 1');
  expect(text).toMatch(/^plumbline_nights_owed \d+$/m);
  await placeQueuesAt(here);
});

it('is told to who knows the token', async () => {
  const ask = (authorization?: string) =>
    GET(new Request('http://localhost:3000/metrics', { headers: authorization ? { authorization } : {} }));
  expect((await ask()).status).toBe(401);
  expect((await ask(`Bearer ${TOKEN}x`)).status).toBe(401);
  const told = await ask(`Bearer ${TOKEN}`);
  expect([told.status, told.headers.get('content-type')]).toEqual([
    200,
    expect.stringContaining('text/plain'),
  ]);
  expect(await told.text()).toContain('plumbline_up');
});
