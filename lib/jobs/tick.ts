import { z } from 'zod';
import { defineJob } from './define-job.ts';

/** Asks the database which nights are owed and what waits in the outbox. */
export const tickJob = defineJob({
  name: 'tick',
  queue: 'day',
  payload: z.object({}),
  attempts: 1,
  jobId: () => 'tick-now',
});
