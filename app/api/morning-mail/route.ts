import { defineRoute } from '#lib/edge/define-route.ts';
import { morningMailSchema } from '#lib/schemas/reply.ts';
import { chooseMorningMail } from '#lib/usecases/choose-morning-mail.ts';

export const POST = defineRoute(
  { permission: 'choose-morning-mail', body: morningMailSchema },
  ({ actor, body }) => chooseMorningMail(actor, body),
);
