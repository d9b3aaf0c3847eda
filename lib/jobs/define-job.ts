import type { z } from 'zod';

/** Two queues, so that a long night never keeps an after-check-in waiting. */
export type QueueName = 'day' | 'night';

export type JobDefinition<Payload> = {
  name: string;
  queue: QueueName;
  /** Ids only, the team first: payloads are stored in clear text. */
  payload: z.ZodType<Payload>;
  /** Tries in a row, without a wait between them; after that the tick finds from the database what is left. */
  attempts: number;
  /** The same work queued twice is one job. No colon, never digits only: the library refuses both. */
  jobId: (payload: Payload) => string;
};

export function defineJob<Payload>(definition: JobDefinition<Payload>): JobDefinition<Payload> {
  return definition;
}
