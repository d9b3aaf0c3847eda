import {
  createPostgresBackend,
  type JobsOptions,
  type JobType,
  type PgQueryable,
  type Processor,
  Queue,
  runMigrations,
  Worker,
} from 'bullmq';
import { env } from '#lib/config/env.ts';
import type { QueueName } from './define-job.ts';

/** Where the queue lives. Everything that differs between the two backends is in this file. */
export type QueuePlace = { kind: 'postgres' | 'redis'; url: string };

/** The calls that producers need, the same on both backends. */
export type OpenQueue = {
  add(name: string, payload: unknown, options: JobsOptions): Promise<unknown>;
  upsertJobScheduler(id: string, repeat: RepeatOptions, template: SchedulerTemplate): Promise<unknown>;
  getJobSchedulersCount(): Promise<number>;
  getJobCounts(...types: JobType[]): Promise<Record<string, number>>;
  getJobs(
    types: JobType[],
    start: number,
    end: number,
    oldestFirst: boolean,
  ): Promise<{ timestamp: number }[]>;
  waitUntilReady(): Promise<void>;
  close(): Promise<void>;
  disconnect(): Promise<void>;
};
type RepeatOptions = { every: number };
type SchedulerTemplate = {
  name: string;
  data: unknown;
  opts: { removeOnComplete: boolean; removeOnFail: boolean };
};

export type OpenWorker = {
  on(event: 'error', listener: (error: Error) => void): unknown;
  on(
    event: 'failed',
    listener: (job: { id?: string | undefined; name: string } | undefined, error: Error) => void,
  ): unknown;
  waitUntilReady(): Promise<unknown>;
  /** Waits for the jobs at work; `force` leaves them to be taken up again. */
  close(force?: boolean): Promise<void>;
};

const SCHEMA = 'bullmq';
/** A job that is safe to run again may stall often: the default gives a job up for good after two kills. */
const STALLED = { maxStalledCount: 20, stalledInterval: 15_000, lockDuration: 30_000 };

export function queuePlace(): QueuePlace {
  const { REDIS_URL, APP_DATABASE_URL } = env();
  return REDIS_URL ? { kind: 'redis', url: REDIS_URL } : { kind: 'postgres', url: APP_DATABASE_URL };
}

/** Makes the queue's tables, as the application's role, which owns their schema. */
export async function prepareQueueTables(client: PgQueryable): Promise<void> {
  // The schema is there already, and the role may not create schemas in the database.
  const withoutCreateSchema: PgQueryable = {
    query: (text, params) =>
      /^create schema/i.test(text) ? Promise.resolve({ rows: [] }) : client.query(text, params),
  };
  await runMigrations(withoutCreateSchema, SCHEMA);
}

export function openQueue(place: QueuePlace, name: QueueName): OpenQueue {
  const queueName = `plumbline-${name}`;
  const queue =
    place.kind === 'redis'
      ? new Queue(queueName, {
          // Producers fail fast: a person may be waiting.
          connection: { url: place.url, maxRetriesPerRequest: 1, connectTimeout: 2_000 },
          skipWaitingForReady: true,
        })
      : new Queue(queueName, { connection: postgres(place, 2) }, createPostgresBackend);
  queue.on('error', () => undefined); // the call that fails says so; between calls it reconnects
  return queue;
}

export function openWorker(
  place: QueuePlace,
  options: { name: QueueName; concurrency: number },
  process: Processor,
): OpenWorker {
  const queueName = `plumbline-${options.name}`;
  const settings = { concurrency: options.concurrency, ...STALLED };
  return place.kind === 'redis'
    ? new Worker(queueName, process, {
        ...settings,
        connection: { url: place.url, maxRetriesPerRequest: null },
      })
    : new Worker(
        queueName,
        process,
        { ...settings, connection: postgres(place, options.concurrency + 2) },
        createPostgresBackend,
      );
}

function postgres(place: QueuePlace, max: number) {
  return { connectionString: place.url, schema: SCHEMA, max, connectionTimeoutMillis: 2_000 };
}
