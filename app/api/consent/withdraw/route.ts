import { defineRoute } from '#lib/edge/define-route.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { withdrawAsGuardian } from '#lib/usecases/guardians/decide-as-guardian.ts';
import { withdrawConsent } from '#lib/usecases/rights/withdraw-consent.ts';

export const POST = defineRoute({ permission: 'own-record' }, async ({ actor, now }) => {
  if (actor.role === 'guardian') {
    await withdrawAsGuardian(actor, now);
    return seeOther('/guardian');
  }
  await withdrawConsent(actor, now);
  return seeOther('/consent');
});
