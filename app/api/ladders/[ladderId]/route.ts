import { defineRoute } from '#lib/edge/define-route.ts';
import { ladderAddress, ladderChange } from '#lib/schemas/ladder.ts';
import { editTeamLadder } from '#lib/usecases/edit-ladder.ts';

export const POST = defineRoute(
  { permission: 'edit-ladders', params: ladderAddress, body: ladderChange },
  ({ actor, params, body, now }) => editTeamLadder(actor, { ladderId: params.ladderId, change: body }, now),
);
