import { z } from 'zod';
import { defineRoute } from '#lib/edge/define-route.ts';
import { runNightsNow } from '#lib/usecases/run-nights-now.ts';

const body = z.strictObject({
  clientId: z.uuid('clientId must be the id of a client, or be left out to run all that is owed').optional(),
  everybody: z.literal(true, { error: 'everybody must be true, or be left out' }).optional(),
});

export const POST = defineRoute({ permission: 'run-nights', body }, ({ actor, body: asked, now }) =>
  runNightsNow(actor.scope, asked, now),
);
