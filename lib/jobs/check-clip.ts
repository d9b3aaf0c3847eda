import { z } from 'zod';
import { defineJob } from './define-job.ts';

/** A clip that is here whole is decoded, and kept as a new file or refused. */
export const checkClipJob = defineJob({
  name: 'check-clip',
  queue: 'film',
  payload: z.object({ teamId: z.uuid(), clipId: z.uuid() }),
  attempts: 2,
  jobId: ({ teamId, clipId }) => `clip_${teamId}_${clipId}`,
});
