import { z } from 'zod';
import { blankIsNull } from './typed.ts';

export const guardianSchema = z.strictObject({
  name: z.string().trim().min(1, 'say the name of the parent or guardian').max(200, 'at most 200 letters'),
  email: z.preprocess(
    blankIsNull,
    z.email('is not an e-mail address; leave it empty to hand the link over yourself').max(200).nullable(),
  ),
});
export type GuardianInput = z.infer<typeof guardianSchema>;

export const guardianAddress = z.object({ guardianId: z.uuid() });

/** `version`: of the text that was read. */
export const guardianDecisionSchema = z.strictObject({
  decision: z.enum(['agree', 'decline'], 'say yes or no'),
  version: z.string().max(20),
  share: z.preprocess((value) => value === true || value === 'on', z.boolean()).default(false),
});
export type GuardianDecision = z.infer<typeof guardianDecisionSchema>;
