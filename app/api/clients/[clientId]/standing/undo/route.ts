import { defineRoute } from '#lib/edge/define-route.ts';
import { standingChangeSchema } from '#lib/schemas/client.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { undoStanding } from '#lib/usecases/undo-standing.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: clientAddress, body: standingChangeSchema },
  ({ actor, params, body, now }) => undoStanding(actor, { ...params, ...body }, now),
);
