import { defineRoute } from '#lib/edge/define-route.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { withdrawAsGuardian } from '#lib/usecases/guardians/decide-as-guardian.ts';

export const POST = defineRoute({ permission: 'act-as-guardian' }, async ({ actor, now }) => {
  await withdrawAsGuardian(actor, now);
  return seeOther('/guardian');
});
