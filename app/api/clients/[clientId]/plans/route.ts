import { defineRoute } from '#lib/edge/define-route.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { planSchema } from '#lib/schemas/plan.ts';
import { savePlan } from '#lib/usecases/save-plan.ts';

export const POST = defineRoute(
  { permission: 'edit-plans', params: clientAddress, body: planSchema },
  async ({ actor, params, body, now }) =>
    Response.json(await savePlan(actor, { clientId: params.clientId, plan: body }, now), { status: 201 }),
);
