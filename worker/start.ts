import { type OpenWorker, openWorker, type QueuePlace } from '#lib/jobs/backend.ts';
import { QUEUES } from '#lib/jobs/define-job.ts';
import { closeQueues, enqueue, placeQueuesAt } from '#lib/jobs/queue.ts';
import { tickJob } from '#lib/jobs/tick.ts';
import { logger } from '#lib/logger.ts';
import { metrics } from '#lib/metrics.ts';
import { markStopping } from '#lib/stopping.ts';
import { closeDatabase } from '#lib/usecases/close-database.ts';
import { errorInWords } from '#lib/usecases/error-in-words.ts';
import { prepareQueue } from '#lib/usecases/prepare-queue.ts';
import { HANDLERS } from './handlers/by-name.ts';
import { openOperationServer } from './operation-server.ts';
import { keepSchedule } from './schedule.ts';

/** The day's small jobs must not wait for each other; a night's batch fills a core, as a film does, with its memory. */
const CONCURRENCY = { day: 4, night: 2, film: 1 };
/** Orchestrators give thirty seconds: leave before they kill. */
const GRACE_MS = 18_000;

/** Starts the workers of one process. The returned function stops them: jobs at work are finished, within the grace. */
export async function startWorker(place: QueuePlace): Promise<() => Promise<void>> {
  await placeQueuesAt(place);
  if (place.kind === 'postgres') await prepareQueue();
  const workers = QUEUES.map((name) =>
    watched(openWorker(place, { name, concurrency: CONCURRENCY[name] }, (job) => handle(job.name, job.data))),
  );
  await Promise.all(workers.map((worker) => worker.waitUntilReady()));
  const leaveSchedule = await keepSchedule();
  await enqueue(tickJob, {});
  const closeServer = await openOperationServer();
  return async () => {
    markStopping();
    leaveSchedule();
    await stop(workers);
    closeServer();
  };
}

async function handle(name: string, payload: unknown): Promise<void> {
  const handler = HANDLERS.get(name);
  if (!handler) throw new Error(`no handler for a job named ${name}`);
  const { jobs, jobSeconds } = metrics();
  const stopTimer = jobSeconds.startTimer({ job: name });
  try {
    await handler(payload);
    jobs.inc({ job: name, outcome: 'done' });
  } catch (error) {
    jobs.inc({ job: name, outcome: 'failed' });
    logger().error({ job: name, error }, 'job failed');
    // The queue stores what a job failed with, and messages can quote what people wrote: it gets kind and place only.
    throw Object.assign(new Error(errorInWords(error)), { stack: '' });
  } finally {
    stopTimer();
  }
}

function watched(worker: OpenWorker): OpenWorker {
  worker.on('error', (error) => logger().warn({ error }, 'queue connection'));
  worker.on('failed', (job) => logger().warn({ job: job?.name }, 'a try of a job is over'));
  return worker;
}

async function stop(workers: OpenWorker[]): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const grace = new Promise<'late'>((late) => {
    timer = setTimeout(() => late('late'), GRACE_MS);
  });
  const closed = Promise.all(workers.map((worker) => worker.close()));
  const how = await Promise.race([closed, grace]);
  clearTimeout(timer);
  if (how === 'late') {
    // What is at work now is taken up again by another worker; the ledger lets nothing happen twice.
    await Promise.race([Promise.all(workers.map((worker) => worker.close(true))), pause(1_000)]);
  }
  await closeQueues();
  await Promise.race([closeDatabase(), pause(2_000)]);
}

function pause(ms: number): Promise<void> {
  return new Promise((done) => setTimeout(done, ms).unref());
}
