import { defineRoute } from '#lib/edge/define-route.ts';
import { movesUndone } from '#lib/schemas/team.ts';
import { undoMoves } from '#lib/usecases/team/move-clients.ts';

export const POST = defineRoute({ permission: 'move-clients', body: movesUndone }, ({ actor, body, now }) =>
  undoMoves(actor, body.moveIds, now),
);
