import { defineRoute } from '#lib/edge/define-route.ts';
import { absenceSchema } from '#lib/schemas/absence.ts';
import { sayAbsence } from '#lib/usecases/say-absence.ts';

export const POST = defineRoute(
  { permission: 'check-in', body: absenceSchema },
  async ({ actor, body, now }) => Response.json(await sayAbsence(actor, body, now), { status: 201 }),
);
