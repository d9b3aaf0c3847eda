import { defineRoute } from '#lib/edge/define-route.ts';
import { zoneSchema } from '#lib/schemas/zone.ts';
import { followZone } from '#lib/usecases/follow-zone.ts';

/** The phone says where it is; the client's days and nights follow. */
export const POST = defineRoute({ permission: 'check-in', body: zoneSchema }, ({ actor, body }) =>
  followZone(actor, body.zone),
);
