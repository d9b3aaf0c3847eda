import { defineRoute } from '#lib/edge/define-route.ts';
import { keptReplySchema } from '#lib/schemas/reply.ts';
import { keepReply } from '#lib/usecases/keep-reply.ts';

export const POST = defineRoute(
  { permission: 'write-to-clients', body: keptReplySchema },
  ({ actor, body, now }) => keepReply(actor, body, now),
);
