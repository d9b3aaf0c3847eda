import { z } from 'zod';
import { defineJob } from './define-job.ts';

/** Hands waiting mails to the mail server. A job for each cause: none is swallowed by one at work. */
export const deliverMailsJob = defineJob({
  name: 'deliver-mails',
  queue: 'day',
  payload: z.object({ after: z.uuid() }),
  attempts: 1,
  jobId: ({ after }) => `mails-after-${after}`,
});
