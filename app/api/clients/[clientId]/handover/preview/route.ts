import { defineRoute } from '#lib/edge/define-route.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { packSchema } from '#lib/schemas/pack.ts';
import { previewPack } from '#lib/usecases/handover/preview-pack.ts';

export const POST = defineRoute(
  { permission: 'export-clients', params: clientAddress, body: packSchema },
  ({ actor, params, body, now }) => previewPack(actor, { clientId: params.clientId, options: body }, now),
);
