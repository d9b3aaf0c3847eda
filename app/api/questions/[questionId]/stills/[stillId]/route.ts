import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { readCapped } from '#lib/edge/read-capped.ts';
import { questionStillAddress } from '#lib/schemas/question.ts';
import { addStill } from '#lib/usecases/add-still.ts';

const MAX_BYTES = 10 * 1024 * 1024;

/** The body is the picture itself: what it is, is read from its bytes and not from its name or type. */
export const POST = defineRoute(
  { permission: 'ask-coach', params: questionStillAddress, limit: LIMITS.still },
  async ({ actor, params, request, now }) => {
    const bytes = await readCapped(request, MAX_BYTES);
    return Response.json(await addStill(actor, { ...params, bytes }, now), { status: 201 });
  },
);
