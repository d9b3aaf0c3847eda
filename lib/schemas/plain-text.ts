import { z } from 'zod';

export const LONGEST_TEXT = 4_000;

/** Letters as people count them: a family of emoji is one. */
export function countGraphemes(text: string): number {
  let count = 0;
  for (const _ of new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text)) count += 1;
  return count;
}

/** Free text of a person: kept as written (NFC), refused when the database could not keep it as written. */
export const plainText = z
  .string({ error: 'must be text' })
  .refine((text) => !text.includes('\u0000'), 'has a character that cannot be kept (null): take it out')
  .refine((text) => text.isWellFormed(), 'has half a character (a lone surrogate): type that character again')
  .transform((text) => text.normalize('NFC').trim())
  .refine(
    // A grapheme is at least one unit, so short texts need no counting.
    (text) =>
      text.length <= LONGEST_TEXT ||
      (text.length <= LONGEST_TEXT * 12 && countGraphemes(text) <= LONGEST_TEXT),
    `is longer than ${LONGEST_TEXT} characters: shorten it or send the rest as a second text`,
  );
