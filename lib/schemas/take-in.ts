import { z } from 'zod';

/** `seen`: the sum of the manifest of the pack that was looked at. */
export const takeInQuery = z.strictObject({
  seen: z
    .string()
    .regex(/^[0-9a-f]{64}$/, 'must be the sum that came with the look at this pack')
    .optional(),
});
