import { defineRoute } from '#lib/edge/define-route.ts';
import { startAddress } from '#lib/schemas/start-tests.ts';
import { undoPlacing } from '#lib/usecases/start/place-by-tests.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: startAddress },
  ({ actor, params, now }) => undoPlacing(actor, params, now),
);
