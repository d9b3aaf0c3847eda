import { z } from 'zod';
import { isZone } from '#lib/domain/local-date.ts';
import { CHECK_KINDS, STANDINGS } from '#lib/domain/vocabulary.ts';
import { plainText } from './plain-text.ts';

const id = (what: string) => z.uuid({ error: `must be the id of ${what}` });
const written = (what: string) => plainText.refine((text) => text !== '', `write ${what} first`);

/** The kept reply that a text started from: its fields have to be filled in before it goes. */
export const fromKeptReply = id('a kept reply').optional();

/** What POST /api/replies/kept takes: a new kept reply, or with `id` a change of one. */
export const keptReplySchema = z.strictObject({
  id: id('a kept reply').optional(),
  name: plainText
    .refine((text) => text !== '', 'give it a name, such as: sore wrist, first answer')
    .refine((text) => text.length <= 80, 'is longer than 80 characters: shorten it'),
  text: written('the reply'),
  /** The answer it was made from. */
  answerId: id('an answer').optional(),
});
export type KeptReplyInput = z.output<typeof keptReplySchema>;

export const keptReplyAddress = z.object({ replyId: z.uuid() });
/** `retired: false` takes it back into the lists. */
export const retireSchema = z.strictObject({
  retired: z.boolean({ error: 'must be true (retire) or false (take back)' }),
});

/** As many as one message may go to at once. */
const MOST_AT_ONCE = 1_000;
/** What POST /api/replies/words takes: words to one client or to several, each sent as its own. */
export const wordsFirstSchema = z.strictObject({
  /** Made by the page: the same again sends nothing twice. */
  actId: id('this act'),
  clientIds: z
    .array(id('a client'))
    .min(1, 'tick at least one client')
    .max(MOST_AT_ONCE, `tick at most ${MOST_AT_ONCE.toLocaleString('en-GB')} clients at once`)
    .transform((ids) => [...new Set(ids)]),
  text: written('your words'),
  keptReplyId: fromKeptReply,
});
export type WordsFirstInput = z.output<typeof wordsFirstSchema>;

/** What GET /api/replies/earlier is asked. */
export const earlierQuery = z.object({
  words: z.string({ error: 'say which words to find' }).trim().min(1, 'say which words to find').max(300),
});

const TIME = /^([01]\d|2[0-3]):[0-5]\d$|^24:00$/;
const time = (like: string) => z.string().regex(TIME, `must be a time such as ${like}`);
/** What POST /api/replies/hours takes: null counts round the clock. */
export const answeringHoursSchema = z.strictObject({
  hours: z
    .strictObject({
      zone: z.string().refine(isZone, 'must be a time zone such as Europe/Lisbon'),
      days: z
        .array(z.int().min(1).max(7), { error: 'tick at least one day' })
        .min(1, 'tick at least one day')
        .transform((days) => [...new Set(days)].sort((a, b) => a - b)),
      from: time('09:00'),
      to: time('17:00'),
    })
    .refine(({ from, to }) => from < to, { path: ['to'], message: 'must be later than the first hour' })
    .nullable(),
});

const single = (value: unknown) => (Array.isArray(value) ? value[0] : value);
const optional = <Schema extends z.ZodType>(schema: Schema) =>
  z.preprocess(single, schema.optional().catch(undefined));
const words = z.string().trim().min(1).max(200);

/** What the address of the page of replies says. What is not known there is left out. */
export const repliesFilter = z.object({
  coach: optional(z.literal('mine')),
  find: optional(z.string().trim().min(1).max(300)),
});
export type RepliesFilter = z.output<typeof repliesFilter>;

/** Whom to write to, in the address of that page. What is not known there is left out: an address is never an error. */
export const recipientFilter = z.object({
  coach: optional(z.union([z.uuid(), z.literal('mine')])),
  standing: optional(z.enum(STANDINGS)),
  skill: optional(words),
  ladder: optional(z.uuid()),
  rung: optional(z.uuid()),
  reason: optional(z.enum(CHECK_KINDS)),
  unseen: optional(z.coerce.number().int().min(1).max(365)),
  q: optional(words),
});
export type RecipientFilter = z.output<typeof recipientFilter>;

/** What POST /api/morning-mail takes. */
export const morningMailSchema = z.strictObject({
  mail: z.enum(['off', 'when-new', 'always'], { error: 'must be off, when-new or always' }),
  hour: z.coerce
    .number({ error: 'must be an hour from 0 to 23' })
    .int('must be a whole hour')
    .min(0, 'must be an hour from 0 to 23')
    .max(23, 'must be an hour from 0 to 23'),
  zone: z.string().refine(isZone, 'must be a time zone such as Europe/Lisbon'),
});
export type MorningMailInput = z.output<typeof morningMailSchema>;
