import { defineRoute } from '#lib/edge/define-route.ts';
import { moveAddress } from '#lib/schemas/team.ts';
import { readMove } from '#lib/usecases/team/move-clients.ts';

export const POST = defineRoute(
  { permission: 'move-clients', params: moveAddress },
  ({ actor, params, now }) => readMove(actor, params.moveId, now),
);
