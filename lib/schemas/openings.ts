import { z } from 'zod';
import { SUPPORTS } from '#lib/domain/vocabulary.ts';

/** What must stand before rungs of a ladder open, as it is kept with the ladder. */
export const openingsSchema = z.array(
  z.object({
    opens: z.string(),
    needsAll: z.array(z.array(z.string())).default([]),
    orOnSupports: z.array(z.enum(SUPPORTS)).default([]),
    under18CoachTick: z.boolean().default(false),
    words: z.string().default(''),
  }),
);
