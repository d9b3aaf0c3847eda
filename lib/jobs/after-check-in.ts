import { z } from 'zod';
import { defineJob } from './define-job.ts';

/** The checks of one client at once, after a check-in or a correction. */
export const afterCheckInJob = defineJob({
  name: 'after-check-in',
  queue: 'day',
  payload: z.object({ teamId: z.uuid(), clientId: z.uuid(), checkInId: z.uuid() }),
  attempts: 3,
  jobId: ({ teamId, clientId, checkInId }) => `after_${teamId}_${clientId}_${checkInId}`,
});
