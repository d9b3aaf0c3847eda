import { z } from 'zod';
import { CLIP_VERDICTS, FAULTS, SIDES } from '#lib/domain/vocabulary.ts';
import { plainText } from './plain-text.ts';

/** Longest film, with room for a clock that counts otherwise. */
const MOST_SECONDS = 120;
const moment = z
  .number('must be seconds from the start of the film')
  .min(0, 'is before the start of the film')
  .max(MOST_SECONDS, 'is after the end of the film');

const set = z.discriminatedUnion(
  'told',
  [
    z.strictObject({
      told: z.literal(true),
      checkInId: z.uuid('choose a set from the list'),
      side: z.enum(SIDES, 'choose a set from the list'),
      index: z.int('choose a set from the list').min(0).max(1_000),
    }),
    z.strictObject({ told: z.literal(false), side: z.enum(SIDES, 'choose a side from the list') }),
  ],
  { error: 'choose a set from the list' },
);

const verdict = {
  act: z.literal('verdict'),
  set,
  verdict: z.enum(CLIP_VERDICTS, 'choose clean, not clean, or cannot see'),
  faults: z
    .array(z.enum(FAULTS, 'choose faults from the list of this ladder'))
    .max(FAULTS.length)
    .default([]),
};
const said = {
  act: z.literal('words'),
  atSeconds: moment,
  text: plainText.pipe(z.string().min(1, 'is empty: write the words to the client')),
};
const looked = { act: z.literal('looked') };
const clipId = z.uuid();
const undo = z.strictObject({ act: z.literal('undo'), id: z.uuid() });

/** What a coach does on a film, as an approval keeps it: what was seen of a set, words at a moment, that it was looked at. */
export const lookAct = z.discriminatedUnion('act', [
  z.strictObject({ ...verdict, clipId }),
  z.strictObject({ ...said, clipId }),
  z.strictObject({ ...looked, clipId }),
]);
export type LookAct = z.output<typeof lookAct>;

/** Bodies of the routes: the film stands in the address. */
export const verdictBody = z.discriminatedUnion('act', [
  z.strictObject(verdict),
  z.strictObject(looked),
  undo,
]);
export const filmWordsBody = z.discriminatedUnion('act', [z.strictObject(said), undo]);

/** Which moment of the film a still is, in the address; the picture is the body. */
export const stillMoment = z.object({ at: z.coerce.number('must be seconds').pipe(moment) });
