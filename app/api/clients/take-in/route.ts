import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { readCapped } from '#lib/edge/read-capped.ts';
import { PACK_BOUNDS } from '#lib/handover/take-in/open-zip.ts';
import { takeInQuery } from '#lib/schemas/take-in.ts';
import { lookAtPack, takeClientIn } from '#lib/usecases/handover/take-client-in.ts';

/** The body is the pack itself. Without `seen` it is tried and taken back; with the sum that came of that it is kept. */
export const POST = defineRoute(
  { permission: 'edit-clients', query: takeInQuery, limit: LIMITS.import },
  async ({ actor, query, request, now }) => {
    const bytes = Buffer.from(await readCapped(request, PACK_BOUNDS.zipped));
    if (query.seen === undefined) return lookAtPack(actor, bytes, now);
    return Response.json(await takeClientIn(actor, { bytes, seen: query.seen }, now), { status: 201 });
  },
);
