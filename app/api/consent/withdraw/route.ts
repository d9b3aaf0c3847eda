import { defineRoute } from '#lib/edge/define-route.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { withdrawConsent } from '#lib/usecases/rights/withdraw-consent.ts';

export const POST = defineRoute({ permission: 'own-record' }, async ({ actor, now }) => {
  await withdrawConsent(actor, now);
  return seeOther('/consent');
});
