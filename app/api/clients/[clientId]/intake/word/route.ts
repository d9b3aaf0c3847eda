import { defineRoute } from '#lib/edge/define-route.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { toldWordSchema } from '#lib/schemas/told-word.ts';
import { recordToldWord } from '#lib/usecases/intake/record-told-word.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: clientAddress, body: toldWordSchema },
  ({ actor, params, body, now }) => recordToldWord(actor, { clientId: params.clientId, word: body }, now),
);
