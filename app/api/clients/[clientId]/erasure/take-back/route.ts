import { defineRoute } from '#lib/edge/define-route.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { takeErasureBack } from '#lib/usecases/rights/ask-erasure.ts';

export const POST = defineRoute(
  { permission: 'keep-records', params: clientAddress },
  async ({ actor, params, now }) => {
    await takeErasureBack(actor, params.clientId, now);
    return seeOther('/team/records');
  },
);
