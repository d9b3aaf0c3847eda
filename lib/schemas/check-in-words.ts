import { z } from 'zod';
import { SIDES } from '#lib/domain/vocabulary.ts';
import { plainText } from './plain-text.ts';

/** The address of what a coach does on one check-in of a client. */
export const clientCheckInAddress = z.object({ clientId: z.uuid(), checkInId: z.uuid() });

/** Words of a coach on a check-in; `set: null` is about the whole day. */
export const checkInWordsSchema = z.strictObject({
  set: z
    .strictObject({
      rungId: z.uuid('choose the day or a set from the list'),
      side: z.enum(SIDES, 'choose the day or a set from the list'),
      index: z.int('choose the day or a set from the list').min(0).max(1_000),
    })
    .nullable(),
  text: plainText.pipe(z.string().min(1, 'is empty: write the words to the client')),
});
export type CheckInWordsInput = z.infer<typeof checkInWordsSchema>;

/** Words that a phone has just shown. */
export const wordsReadSchema = z.strictObject({
  ids: z
    .array(z.uuid('must be an id of words'))
    .min(1, 'is empty: name the words')
    .max(200, 'at most 200 at once'),
});
