import { defineRoute, type RouteHandler } from '#lib/edge/define-route.ts';
import { refusedPage } from '#lib/edge/refused-page.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { consentSchema } from '#lib/schemas/rights.ts';
import { agreeAsGuardian } from '#lib/usecases/guardians/decide-as-guardian.ts';
import { homeAfterConsent } from '#lib/usecases/intake/home-after-consent.ts';
import { giveConsent } from '#lib/usecases/rights/give-consent.ts';

const give = defineRoute({ permission: 'own-record', body: consentSchema }, async ({ actor, body, now }) => {
  if (actor.role === 'guardian') {
    await agreeAsGuardian(actor, { share: body.share }, now);
    return seeOther('/guardian');
  }
  await giveConsent(actor, body, now);
  return seeOther(await homeAfterConsent(actor, now));
});

/** A plain form: a refusal is a page that asks again. */
export const POST: RouteHandler = async (request, context) => {
  const posted = request.clone();
  return refusedPage(await give(request, context), '/api/consent', posted);
};
