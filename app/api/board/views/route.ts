import { defineRoute } from '#lib/edge/define-route.ts';
import { viewAct } from '#lib/schemas/board-reads.ts';
import { changeViews } from '#lib/usecases/change-views.ts';

export const POST = defineRoute({ permission: 'keep-views', body: viewAct }, ({ actor, body }) =>
  changeViews(actor, body),
);
