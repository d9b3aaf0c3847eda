import { defineRoute } from '#lib/edge/define-route.ts';
import { clinicianWordSchema } from '#lib/schemas/client.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { recordClinicianWord } from '#lib/usecases/record-clinician-word.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: clientAddress, body: clinicianWordSchema },
  ({ actor, params, body, now }) =>
    recordClinicianWord(actor, { clientId: params.clientId, word: body }, now),
);
