import { defineRoute } from '#lib/edge/define-route.ts';
import { jsonAnswer } from '#lib/edge/json-answer.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { kickOutbox } from '#lib/jobs/queue.ts';
import { checkInSchema } from '#lib/schemas/check-in.ts';
import { countedSubmit } from '#lib/usecases/counted-submit.ts';

/** Stable address: a form opened before an update is sent here after it. Same id, same answer. */
export const POST = defineRoute(
  { permission: 'check-in', body: checkInSchema, maxBytes: 64 * 1024, limit: LIMITS['check-in'] },
  async ({ actor, body, now }) => {
    const answer = await countedSubmit(actor, body, now);
    void kickOutbox(); // nobody waits for the queue: the check-in is kept, and the tick finds what is left
    return jsonAnswer(answer, 201);
  },
);
