import { defineRoute } from '#lib/edge/define-route.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { intakeChangeSchema } from '#lib/schemas/intake.ts';
import { changeIntake } from '#lib/usecases/intake/change-intake.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: clientAddress, body: intakeChangeSchema },
  ({ actor, params, body, now }) => changeIntake(actor, { clientId: params.clientId, change: body }, now),
);
