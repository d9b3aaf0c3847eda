import { z } from 'zod';
import { isZone } from '#lib/domain/local-date.ts';

/** What POST /api/zone takes. */
export const zoneSchema = z.strictObject({
  zone: z
    .string({ error: 'must be a time zone' })
    .refine(isZone, 'must be a time zone such as Europe/Lisbon'),
});
