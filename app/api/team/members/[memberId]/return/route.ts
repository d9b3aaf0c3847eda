import { defineRoute } from '#lib/edge/define-route.ts';
import { memberAddress, returnSchema } from '#lib/schemas/team.ts';
import { resumeMembership } from '#lib/usecases/team/end-membership.ts';

export const POST = defineRoute(
  { permission: 'manage-team', params: memberAddress, body: returnSchema },
  ({ actor, params, body, now }) => resumeMembership(actor, { ...params, ...body }, now),
);
