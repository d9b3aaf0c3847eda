import { defineRoute } from '#lib/edge/define-route.ts';
import { standingSchema } from '#lib/schemas/client.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { changeStanding } from '#lib/usecases/change-standing.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: clientAddress, body: standingSchema },
  ({ actor, params, body, now }) => changeStanding(actor, { clientId: params.clientId, ...body }, now),
);
