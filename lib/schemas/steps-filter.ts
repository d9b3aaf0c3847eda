import { z } from 'zod';
import { CHECK_KINDS } from '#lib/domain/vocabulary.ts';
import { STEP_PERIODS } from '#lib/views/steps/step-period.ts';

const single = (value: unknown) => (Array.isArray(value) ? value[0] : value);
const optional = <Schema extends z.ZodType>(schema: Schema) =>
  z.preprocess(single, schema.optional().catch(undefined));

/** The filter in the address of the steps. What is not known there is left out: an address is never an error. */
export const stepsFilter = z.object({
  period: z.preprocess(single, z.enum(STEP_PERIODS).catch('last-month')),
  coach: optional(z.uuid()),
  kind: optional(z.enum(CHECK_KINDS)),
});
export type StepsFilter = z.output<typeof stepsFilter>;
