import { enqueue, queue } from '#lib/jobs/queue.ts';
import { tickJob } from '#lib/jobs/tick.ts';

const MINUTE_MS = 60_000;
/** A queue that was emptied has no schedule any more: how often each worker looks whether it is there. */
const LOOK_MS = 10_000;

/**
 * What repeats, and how often. A repeat that is missed is lost by the queue: that is why the tick asks the database
 * which nights are owed instead of counting on having run.
 */
const SCHEDULE = [{ id: 'tick-every-15-minutes', everyMs: 15 * MINUTE_MS, job: tickJob }];

export async function writeSchedule(): Promise<void> {
  for (const { id, everyMs, job } of SCHEDULE) {
    await queue(job.queue).upsertJobScheduler(
      id,
      { every: everyMs },
      { name: job.name, data: {}, opts: { removeOnComplete: true, removeOnFail: true } },
    );
  }
}

/** Writes the schedule and sees to it that it stays: without it no night would run until a worker starts. */
export async function keepSchedule(): Promise<() => void> {
  await writeSchedule();
  const timer = setInterval(() => void restoreSchedule().catch(() => undefined), LOOK_MS); // away: at the next look
  timer.unref();
  return () => clearInterval(timer);
}

async function restoreSchedule(): Promise<void> {
  for (const { job } of SCHEDULE) {
    if ((await queue(job.queue).getJobSchedulersCount()) > 0) continue;
    await writeSchedule();
    await enqueue(job, {}); // whatever was queued is gone as well: ask the database now
  }
}
