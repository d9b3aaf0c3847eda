import { defineRoute } from '#lib/edge/define-route.ts';
import { moveSchema } from '#lib/schemas/team.ts';
import { moveClients } from '#lib/usecases/team/move-clients.ts';

export const POST = defineRoute({ permission: 'move-clients', body: moveSchema }, ({ actor, body, now }) =>
  moveClients(actor, body, now),
);
