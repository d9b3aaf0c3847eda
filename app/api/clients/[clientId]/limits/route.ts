import { defineRoute } from '#lib/edge/define-route.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { limitSchema } from '#lib/schemas/limit.ts';
import { addLimit } from '#lib/usecases/add-limit.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: clientAddress, body: limitSchema },
  ({ actor, params, body, now }) => addLimit(actor, { clientId: params.clientId, limit: body }, now),
);
