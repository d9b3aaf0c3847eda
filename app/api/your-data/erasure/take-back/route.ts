import { defineRoute } from '#lib/edge/define-route.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { takeErasureBack } from '#lib/usecases/rights/ask-erasure.ts';

export const POST = defineRoute({ permission: 'own-record' }, async ({ actor, now }) => {
  if (actor.clientId) await takeErasureBack(actor, actor.clientId, now);
  return seeOther('/your-data');
});
