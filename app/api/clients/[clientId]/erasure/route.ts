import { defineRoute } from '#lib/edge/define-route.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { leadErasureSchema } from '#lib/schemas/rights.ts';
import { askErasureOf } from '#lib/usecases/rights/ask-erasure.ts';

export const POST = defineRoute(
  { permission: 'keep-records', params: clientAddress, body: leadErasureSchema },
  async ({ actor, params, body, now }) => {
    const { clientId } = params;
    await askErasureOf(actor, { clientId, words: body.words }, now);
    return seeOther(`/clients/${clientId}/rights`);
  },
);
