import { defineRoute } from '#lib/edge/define-route.ts';
import { intakeSentSchema } from '#lib/schemas/intake.ts';
import { sendIntake } from '#lib/usecases/intake/send-intake.ts';

export const POST = defineRoute({ permission: 'check-in', body: intakeSentSchema }, ({ actor, body, now }) =>
  sendIntake(actor, body, now),
);
