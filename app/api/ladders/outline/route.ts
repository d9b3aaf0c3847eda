import { defineRoute } from '#lib/edge/define-route.ts';
import { outlineChange } from '#lib/schemas/outline.ts';
import { editOutline } from '#lib/usecases/edit-outline.ts';

export const POST = defineRoute({ permission: 'edit-ladders', body: outlineChange }, ({ actor, body, now }) =>
  editOutline(actor, body, now),
);
