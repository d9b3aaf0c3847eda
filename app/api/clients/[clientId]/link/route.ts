import { defineRoute } from '#lib/edge/define-route.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { inviteClient } from '#lib/usecases/invite-client.ts';

export const POST = defineRoute(
  { permission: 'invite-clients', params: clientAddress },
  async ({ actor, params, now }) =>
    Response.json(await inviteClient(actor, params.clientId, now), { status: 201 }),
);
