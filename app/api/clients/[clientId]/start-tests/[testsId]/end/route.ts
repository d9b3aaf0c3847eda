import { defineRoute } from '#lib/edge/define-route.ts';
import { startAddress } from '#lib/schemas/start-tests.ts';
import { takeTestsBack } from '#lib/usecases/start/ask-tests.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: startAddress },
  ({ actor, params, now }) => takeTestsBack(actor, params, now),
);
