import { z } from 'zod';
import { plainText } from './plain-text.ts';

/** A question asked beside a check-in. The id is made on the phone, so that it is kept once. */
export const questionSchema = z.strictObject({
  id: z.uuid({ error: 'must be an id made on the phone' }).toLowerCase(),
  text: plainText.pipe(z.string().min(1, 'is empty: write the question')),
});
export type QuestionBody = z.infer<typeof questionSchema>;

/** A still in an address; its id is made on the phone, so that it is kept once. */
export const questionStillAddress = z.object({
  questionId: z.uuid().toLowerCase(),
  stillId: z.uuid().toLowerCase(),
});
export const stillAddress = z.object({ stillId: z.uuid().toLowerCase() });
