import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { readCapped } from '#lib/edge/read-capped.ts';
import { clipAddress } from '#lib/schemas/clip.ts';
import { stillMoment } from '#lib/schemas/looking.ts';
import { takeStill } from '#lib/usecases/looking/take-still.ts';

const MAX_BYTES = 10 * 1024 * 1024;

/** The body is the picture of one moment of the film: what it is, is read from its bytes. */
export const POST = defineRoute(
  { permission: 'edit-clients', params: clipAddress, query: stillMoment, limit: LIMITS.still },
  async ({ actor, params, query, request, now }) => {
    const bytes = await readCapped(request, MAX_BYTES);
    return Response.json(await takeStill(actor, { ...params, atSeconds: query.at, bytes }, now), {
      status: 201,
    });
  },
);
