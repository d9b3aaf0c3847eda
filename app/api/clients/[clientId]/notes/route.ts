import { defineRoute } from '#lib/edge/define-route.ts';
import { noteSchema } from '#lib/schemas/client.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { addNote } from '#lib/usecases/add-note.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: clientAddress, body: noteSchema },
  ({ actor, params, body, now }) => addNote(actor, { clientId: params.clientId, text: body.text }, now),
);
