import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { defineJob } from './define-job.ts';

/** Hands on what submit transactions left in the outbox. Each is a job of its own: none is swallowed by one at work. */
export const deliverOutboxJob = defineJob({
  name: 'deliver-outbox',
  queue: 'day',
  payload: z.object({}),
  attempts: 1,
  jobId: () => `deliver-outbox-${randomUUID()}`,
});
