import { defineRoute } from '#lib/edge/define-route.ts';
import { intakeSavedSchema } from '#lib/schemas/intake.ts';
import { saveDraft } from '#lib/usecases/intake/save-intake-draft.ts';

export const POST = defineRoute({ permission: 'check-in', body: intakeSavedSchema }, ({ actor, body, now }) =>
  saveDraft(actor, body.draft, now),
);
