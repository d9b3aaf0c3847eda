import { randomUUID } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import { AppError } from '#lib/errors.ts';
import { type OpenQueue, openQueue, type QueuePlace, queuePlace } from './backend.ts';
import type { JobDefinition, QueueName } from './define-job.ts';
import { deliverMailsJob } from './deliver-mails.ts';
import { deliverNoticesJob } from './deliver-notices.ts';
import { deliverOutboxJob } from './deliver-outbox.ts';

/** How long a producer waits for the queue before it says that it cannot be reached. */
const PATIENCE_MS = 2_000;
/** Check-ins that come in within this time are handed on by one job: an evening's phones do not cost the queue a job each. */
const BEAT_MS = 100;

type Queues = { place: QueuePlace; open: Map<QueueName, OpenQueue> };
// On globalThis: pages and route handlers are separate module graphs in one process.
const store = globalThis as typeof globalThis & { plumblineQueues?: Queues; plumblineKick?: Promise<void> };

/** Producers of this process use this place from now on, instead of the environment's. */
export async function placeQueuesAt(place: QueuePlace): Promise<void> {
  await closeQueues();
  store.plumblineQueues = { place, open: new Map() };
}

export function queue(name: QueueName): OpenQueue {
  store.plumblineQueues ??= { place: queuePlace(), open: new Map() };
  const { place, open } = store.plumblineQueues;
  const found = open.get(name) ?? openQueue(place, name);
  open.set(name, found);
  return found;
}

/** Queues one job. Throws `unavailable` when the queue does not answer: the database still knows what is owed. */
export async function enqueue<Payload>(job: JobDefinition<Payload>, payload: Payload): Promise<void> {
  const parsed = job.payload.parse(payload);
  await ask(job.queue, (open) =>
    open.add(job.name, parsed, {
      jobId: job.jobId(parsed),
      attempts: job.attempts,
      // Kept jobs would swallow the same work asked for again; the ledger keeps what happened.
      removeOnComplete: true,
      removeOnFail: true,
    }),
  );
}

/** Says that something waits in the outbox. Never throws: when the queue is down the tick finds it. */
export function kickOutbox(): Promise<void> {
  store.plumblineKick ??= kickAtTheBeat();
  return store.plumblineKick;
}

async function kickAtTheBeat(): Promise<void> {
  await pause(BEAT_MS);
  delete store.plumblineKick; // what is written from here on may come too late for this job
  await enqueue(deliverOutboxJob, {}).catch(() => undefined);
}

/** Says that notices of a team may wait after an act or words, as pushes or mails. Never throws, as above. */
export async function kickNotices(teamId: string, after: string): Promise<void> {
  await enqueue(deliverNoticesJob, { teamId, after }).catch(() => undefined);
  await kickMails(after);
}

/** Says that a mail waits. `after`: what it was written for. Never throws, as above. */
export async function kickMails(after: string = randomUUID()): Promise<void> {
  await enqueue(deliverMailsJob, { after }).catch(() => undefined);
}

/** True when the queue answers. */
export async function isQueueReady(): Promise<boolean> {
  return ask('day', (open) => open.getJobCounts('waiting')).then(
    () => true,
    () => false,
  );
}

export async function closeQueues(): Promise<void> {
  const open = store.plumblineQueues?.open;
  delete store.plumblineQueues;
  if (!open) return;
  await Promise.all([...open.values()].map((each) => patiently(each.close()).catch(() => each.disconnect())));
}

async function ask<T>(name: QueueName, work: (open: OpenQueue) => Promise<T>): Promise<T> {
  const open = queue(name);
  try {
    return await patiently(work(open));
  } catch (error) {
    // A connection that failed once (tables not made yet, server away) stays failed: the next call opens a new one.
    store.plumblineQueues?.open.delete(name);
    void open.close().catch(() => undefined);
    throw error;
  }
}

async function patiently<T>(work: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, fail) => {
    timer = setTimeout(() => fail(new Error(`no answer within ${PATIENCE_MS} ms`)), PATIENCE_MS);
  });
  try {
    return await Promise.race([work, late]);
  } catch (cause) {
    throw new AppError('unavailable', 'The queue does not answer.', { cause });
  } finally {
    clearTimeout(timer);
    work.catch(() => undefined); // a rejection after the answer was given up
  }
}
