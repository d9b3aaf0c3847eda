import { defineRoute } from '#lib/edge/define-route.ts';
import { placeStartTests, startAddress } from '#lib/schemas/start-tests.ts';
import { placeByTests } from '#lib/usecases/start/place-by-tests.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: startAddress, body: placeStartTests },
  ({ actor, params, body, now }) => placeByTests(actor, { ...params, asked: body }, now),
);
