import { defineRoute } from '#lib/edge/define-route.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { askStartTestsSchema } from '#lib/schemas/start-tests.ts';
import { askTests } from '#lib/usecases/start/ask-tests.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: clientAddress, body: askStartTestsSchema },
  async ({ actor, params, body, now }) =>
    Response.json(await askTests(actor, { clientId: params.clientId, asked: body }, now), { status: 201 }),
);
