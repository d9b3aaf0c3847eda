import { defineRoute } from '#lib/edge/define-route.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { guardianSchema } from '#lib/schemas/guardian.ts';
import { nameGuardian } from '#lib/usecases/guardians/name-guardian.ts';

export const POST = defineRoute(
  { permission: 'invite-clients', params: clientAddress, body: guardianSchema },
  ({ actor, params, body, now }) => nameGuardian(actor, { clientId: params.clientId, guardian: body }, now),
);
