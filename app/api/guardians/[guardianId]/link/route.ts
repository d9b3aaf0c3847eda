import { defineRoute } from '#lib/edge/define-route.ts';
import { guardianAddress } from '#lib/schemas/guardian.ts';
import { linkGuardian } from '#lib/usecases/guardians/link-guardian.ts';

export const POST = defineRoute(
  { permission: 'invite-clients', params: guardianAddress },
  ({ actor, params, now }) => linkGuardian(actor, params.guardianId, now),
);
