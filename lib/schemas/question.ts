import { z } from 'zod';
import { plainText } from './plain-text.ts';

/** A question asked beside a check-in. The id is made on the phone, so that it is kept once. */
export const questionSchema = z.strictObject({
  id: z.uuid({ error: 'must be an id made on the phone' }).toLowerCase(),
  text: plainText.pipe(z.string().min(1, 'is empty: write the question')),
});
export type QuestionBody = z.infer<typeof questionSchema>;
