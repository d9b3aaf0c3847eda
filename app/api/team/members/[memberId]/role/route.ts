import { defineRoute } from '#lib/edge/define-route.ts';
import { memberAddress, roleSchema } from '#lib/schemas/team.ts';
import { changeRole } from '#lib/usecases/team/change-role.ts';

export const POST = defineRoute(
  { permission: 'manage-team', params: memberAddress, body: roleSchema },
  ({ actor, params, body, now }) => changeRole(actor, { ...params, ...body }, now),
);
