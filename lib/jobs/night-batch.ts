import { createHash } from 'node:crypto';
import { z } from 'zod';
import { defineJob } from './define-job.ts';

export const NIGHT_BATCH_SIZE = 100;

/** One local date of up to a hundred clients of one team. */
export const nightBatchJob = defineJob({
  name: 'night-batch',
  queue: 'night',
  payload: z.object({
    teamId: z.uuid(),
    localDate: z.iso.date(),
    clientIds: z.array(z.uuid()).min(1).max(NIGHT_BATCH_SIZE),
  }),
  attempts: 3,
  jobId: ({ teamId, localDate, clientIds }) => {
    const clients = createHash('sha256')
      .update([...clientIds].sort().join())
      .digest('hex')
      .slice(0, 16);
    return `night_${teamId}_${localDate}_${clients}`;
  },
});
