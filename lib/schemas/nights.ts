import { z } from 'zod';

const single = (value: unknown) => (Array.isArray(value) ? value[0] : value);

/** Which page of the nights: those before a date. An address that says something else shows the newest. */
export const nightsPage = z.object({
  before: z.preprocess(single, z.iso.date().optional().catch(undefined)),
});
