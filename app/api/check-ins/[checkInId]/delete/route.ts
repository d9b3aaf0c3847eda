import { z } from 'zod';
import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { kickOutbox } from '#lib/jobs/queue.ts';
import { checkInAddress } from '#lib/schemas/check-in-address.ts';
import { deleteCheckIn } from '#lib/usecases/delete-check-in.ts';

export const POST = defineRoute(
  {
    permission: 'check-in',
    params: checkInAddress,
    body: z.strictObject({}),
    limit: LIMITS['check-in'],
  },
  async ({ actor, params, now }) => {
    await deleteCheckIn(actor, params.checkInId, now);
    void kickOutbox(); // nobody waits for the queue: it is deleted, and the tick finds what is left
  },
);
