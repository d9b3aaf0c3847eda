import { defineRoute } from '#lib/edge/define-route.ts';
import { answeringHoursSchema } from '#lib/schemas/reply.ts';
import { setAnsweringHours } from '#lib/usecases/set-answering-hours.ts';

export const POST = defineRoute(
  { permission: 'manage-team', body: answeringHoursSchema },
  ({ actor, body }) => setAnsweringHours(actor, body.hours),
);
