import { z } from 'zod';

const given = z
  .preprocess((value) => (value === '' ? undefined : value), z.uuid().optional())
  .catch(undefined);

/** What a plan page is opened with: a draft, or a plan to copy from another client or a template. Else: nothing. */
export const planAddress = z.object({ draft: given, client: given, template: given, approval: given });
export type PlanAddress = z.infer<typeof planAddress>;

/** The id in the address of a kept plan's routes. */
export const templateAddress = z.object({ templateId: z.uuid() });
