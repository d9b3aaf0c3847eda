import type { z } from 'zod';

/** Own queues, so that neither a long night nor a film that is decoded keeps an after-check-in waiting. */
export const QUEUES = ['day', 'night', 'film'] as const;
export type QueueName = (typeof QUEUES)[number];

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
