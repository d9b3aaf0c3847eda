import { z } from 'zod';
import { defineJob } from './define-job.ts';

/** Hands the notices of a team to the push services. A job for each answer: none is swallowed by one at work. */
export const deliverNoticesJob = defineJob({
  name: 'deliver-notices',
  queue: 'day',
  payload: z.object({ teamId: z.uuid(), after: z.uuid() }),
  attempts: 1,
  jobId: ({ after }) => `notices-after-${after}`,
});
