import { defineRoute } from '#lib/edge/define-route.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { planSchema } from '#lib/schemas/plan.ts';
import { prepareAct } from '#lib/usecases/team/prepare-act.ts';

/** Answers with the version; with what was kept for approval where it waits for a coach. */
export const POST = defineRoute(
  { permission: 'prepare-acts', params: clientAddress, body: planSchema },
  async ({ actor, params, body, now }) => {
    const done = await prepareAct(actor, { act: 'plan', clientId: params.clientId, body }, now);
    if (done.waits) return Response.json({ approvalId: done.actId, line: done.line }, { status: 202 });
    return Response.json({ version: done.version }, { status: 201 });
  },
);
