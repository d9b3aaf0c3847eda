import { z } from 'zod';
import { toldAtStart } from './intake.ts';
import { blankIsNull } from './typed.ts';

const date = z.iso.date('write the date as YYYY-MM-DD');

/** What a clinician said about a yes of the start. */
export const toldWordSchema = z
  .strictObject({
    told: toldAtStart,
    lifts: z.preprocess(
      (value) => (value === 'yes' ? true : value === 'no' ? false : value),
      z.boolean('say whether the clinician allows it'),
    ),
    clinician: z
      .string()
      .trim()
      .min(1, 'say who said it: the name, or what they are')
      .max(200, 'at most 200 letters'),
    date,
    words: z.string().trim().min(1, 'write what the clinician said').max(2_000, 'at most 2,000 letters'),
    reviewOn: z.preprocess(blankIsNull, date.nullable()).default(null),
  })
  .refine((word) => word.reviewOn === null || word.reviewOn >= word.date, {
    path: ['reviewOn'],
    message: 'is before the day of the clinician’s word',
  });
export type ToldWordInput = z.infer<typeof toldWordSchema>;
