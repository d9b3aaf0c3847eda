import { z } from 'zod';

/** The id of a check-in in an address. */
export const checkInAddress = z.object({ checkInId: z.uuid() });
