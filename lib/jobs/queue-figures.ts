import { QUEUES, type QueueName } from './define-job.ts';
import { queue } from './queue.ts';

export type QueueFigures = {
  queue: QueueName;
  waiting: number;
  active: number;
  delayed: number;
  /** How long the oldest waiting job has waited; 0 when none does. */
  oldestSeconds: number;
};

/** What waits in each queue. Throws when the queue does not answer. */
export async function queueFigures(now: Date): Promise<QueueFigures[]> {
  return Promise.all(
    QUEUES.map(async (name) => {
      const open = queue(name);
      const {
        waiting = 0,
        active = 0,
        delayed = 0,
      } = await open.getJobCounts('waiting', 'active', 'delayed');
      const [oldest] = waiting > 0 ? await open.getJobs(['waiting'], 0, 0, true) : [];
      const oldestSeconds = oldest ? Math.max(0, (now.getTime() - oldest.timestamp) / 1000) : 0;
      return { queue: name, waiting, active, delayed, oldestSeconds };
    }),
  );
}
