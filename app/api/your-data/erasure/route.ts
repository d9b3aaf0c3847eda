import { defineRoute } from '#lib/edge/define-route.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { erasureAskSchema } from '#lib/schemas/rights.ts';
import { askErasure } from '#lib/usecases/rights/ask-erasure.ts';

export const POST = defineRoute(
  { permission: 'own-record', body: erasureAskSchema },
  async ({ actor, now }) => {
    await askErasure(actor, now);
    return seeOther('/your-data/delete');
  },
);
