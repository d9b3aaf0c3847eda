import { defineRoute } from '#lib/edge/define-route.ts';
import { goingSchema, memberAddress } from '#lib/schemas/team.ts';
import { endMembership } from '#lib/usecases/team/end-membership.ts';

/** The member leaves the team. */
export const POST = defineRoute(
  { permission: 'manage-team', params: memberAddress, body: goingSchema },
  ({ actor, params, body, now }) => endMembership(actor, { ...params, ...body }, now),
);
