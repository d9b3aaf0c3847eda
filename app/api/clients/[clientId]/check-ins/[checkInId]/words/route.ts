import { defineRoute } from '#lib/edge/define-route.ts';
import { checkInWordsSchema, clientCheckInAddress } from '#lib/schemas/check-in-words.ts';
import { sayOnCheckIn } from '#lib/usecases/say-on-check-in.ts';

export const POST = defineRoute(
  { permission: 'write-to-clients', params: clientCheckInAddress, body: checkInWordsSchema },
  async ({ actor, params, body, now }) =>
    Response.json(await sayOnCheckIn(actor, { ...params, words: body }, now), { status: 201 }),
);
