import { defineRoute } from '#lib/edge/define-route.ts';
import { newLadder } from '#lib/schemas/outline.ts';
import { makeLadder } from '#lib/usecases/make-ladder.ts';

export const POST = defineRoute({ permission: 'edit-ladders', body: newLadder }, async ({ actor, body }) =>
  Response.json(await makeLadder(actor, body), { status: 201 }),
);
