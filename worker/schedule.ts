import { queue } from '#lib/jobs/queue.ts';
import { tickJob } from '#lib/jobs/tick.ts';

const MINUTE_MS = 60_000;

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
