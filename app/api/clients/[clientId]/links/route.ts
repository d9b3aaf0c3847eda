import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { makeLinkSchema } from '#lib/schemas/handover-link.ts';
import { makeLink } from '#lib/usecases/handover/make-link.ts';

export const POST = defineRoute(
  { permission: 'export-clients', params: clientAddress, body: makeLinkSchema, limit: LIMITS.export },
  async ({ actor, params, body, now }) =>
    Response.json(await makeLink(actor, { clientId: params.clientId, ask: body }, now), { status: 201 }),
);
