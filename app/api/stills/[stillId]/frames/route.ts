import { defineRoute } from '#lib/edge/define-route.ts';
import { stillAddress } from '#lib/schemas/question.ts';
import { stillFrame } from '#lib/schemas/still-frame.ts';
import { keepStillFrame } from '#lib/usecases/stills/keep-still-frame.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: stillAddress, body: stillFrame },
  async ({ actor, params, body, now }) =>
    Response.json(await keepStillFrame(actor, params.stillId, body, now), { status: 201 }),
);
