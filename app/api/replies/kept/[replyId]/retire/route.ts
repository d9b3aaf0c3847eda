import { defineRoute } from '#lib/edge/define-route.ts';
import { keptReplyAddress, retireSchema } from '#lib/schemas/reply.ts';
import { retireReply } from '#lib/usecases/retire-reply.ts';

export const POST = defineRoute(
  { permission: 'write-to-clients', params: keptReplyAddress, body: retireSchema },
  ({ actor, params, body, now }) => retireReply(actor, { ...params, ...body }, now),
);
