import { z } from 'zod';

/** The id in the address of a client's pages and routes. */
export const clientAddress = z.object({ clientId: z.uuid() });
