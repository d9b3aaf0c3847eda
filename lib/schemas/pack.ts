import { z } from 'zod';
import { PACK_PARTS, type PackOptions } from '#lib/handover/pack-content.ts';
import { PAPERS } from '#lib/handover/report/blocks.ts';
import { localDate } from './history-values.ts';
import { plainText } from './plain-text.ts';
import { blankIsNull } from './typed.ts';

const date = z.preprocess(blankIsNull, localDate.nullable()).default(null);
const words = z.preprocess((value) => value ?? '', plainText);
const wordsOrNull = words.transform((text) => (text === '' ? null : text));
const short = words.refine((text) => text.length <= 300, 'is longer than 300 letters: shorten it');

/** What goes into a pack, as the form sends it. A period without ends is everything. */
export const packSchema = z
  .strictObject({
    from: date,
    to: date,
    parts: z.preprocess(
      (value) => (value === undefined ? [] : [value].flat()),
      z.array(z.enum(PACK_PARTS, 'choose parts from the list')).max(PACK_PARTS.length, 'name each part once'),
    ),
    paper: z.enum(PAPERS, 'choose A4 or Letter').default('A4'),
    forWhom: short,
    why: short,
    summary: wordsOrNull,
    next: wordsOrNull,
    manner: wordsOrNull,
  })
  .superRefine(({ from, to }, context) => {
    if (from !== null && to !== null && to < from)
      context.addIssue({
        code: 'custom',
        path: ['to'],
        message: 'the last day is before the first: change one of them',
      });
  })
  .transform(
    ({ from, to, parts, paper, ...said }): PackOptions => ({
      period: { from, to },
      parts: PACK_PARTS.filter((part) => parts.includes(part)),
      paper,
      words: said,
    }),
  );
