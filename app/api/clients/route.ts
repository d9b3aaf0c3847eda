import { defineRoute } from '#lib/edge/define-route.ts';
import { newClientSchema } from '#lib/schemas/client.ts';
import { makeClient } from '#lib/usecases/make-client.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', body: newClientSchema },
  async ({ actor, body, now }) => Response.json(await makeClient(actor, body, now), { status: 201 }),
);
