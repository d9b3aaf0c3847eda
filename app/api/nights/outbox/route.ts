import { defineRoute } from '#lib/edge/define-route.ts';
import { stuckKind } from '#lib/schemas/stuck.ts';
import { tryStuck } from '#lib/usecases/try-stuck.ts';

export const POST = defineRoute({ permission: 'run-nights', body: stuckKind }, ({ actor, body }) =>
  tryStuck(actor.scope, body.kind),
);
