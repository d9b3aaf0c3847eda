import { defineRoute } from '#lib/edge/define-route.ts';
import { leavesSchema, memberAddress } from '#lib/schemas/team.ts';
import { giveLeave } from '#lib/usecases/team/give-leave.ts';

/** Kinds of act that an assistant does without approval. */
export const POST = defineRoute(
  { permission: 'manage-team', params: memberAddress, body: leavesSchema },
  ({ actor, params, body, now }) => giveLeave(actor, { ...params, ...body }, now),
);
