import { z } from 'zod';
import { CHECK_KINDS, TIERS } from '#lib/domain/vocabulary.ts';
import { plainText } from './plain-text.ts';
import { fromKeptReply } from './reply.ts';

const id = (what: string) => z.uuid({ error: `must be the id of ${what}` });
const words = plainText.default('');
const date = z.iso.date({ error: 'must be a date such as 2026-11-25' });

const onClient = { clientId: id('a client') };
/** One reason of the client; all open ones when left out. */
const onReasons = { ...onClient, reasonId: id('a reason of this client').optional() };

const untilWhen = {
  until: z.enum(['next-check-in', 'change', 'date'], { error: 'must be next-check-in, change or date' }),
  date: date.optional(),
  words,
};
const hasDate = (body: { until: string; date?: string | undefined }) =>
  body.until !== 'date' || body.date !== undefined;
const needsDate = { path: ['date'], message: 'say until which date, such as 2026-12-01' };
/** The line of a folded row has room for a few words. */
const LONGEST_KNOWN = 120;
const MOST_AT_ONCE = 300;

/** What a coach does with a row of the board. */
export const boardAct = z.discriminatedUnion(
  'act',
  [
    z.strictObject({
      act: z.literal('take'),
      ...onReasons,
      words,
      /** Do what the draft of the step says, with these words to the client. */
      draft: z
        .strictObject({
          reasonId: id('the reason whose draft was shown'),
          planVersion: z.int({ error: 'must be the version of the plan the draft was made from' }).min(0),
          words,
        })
        .optional(),
    }),
    z.strictObject({ act: z.literal('put-aside'), ...onReasons, ...untilWhen }).refine(hasDate, needsDate),
    z.strictObject({
      act: z.literal('done'),
      ...onReasons,
      rightToTell: z.boolean({ error: 'must be true (right to tell me) or false (not needed)' }).optional(),
      words,
    }),
    z.strictObject({
      act: z.literal('answer'),
      ...onClient,
      questionId: id('a question of this client'),
      text: plainText.refine((text) => text !== '', 'write an answer first'),
      keptReplyId: fromKeptReply,
    }),
    z.strictObject({ act: z.literal('seen'), ...onClient }),
    z.strictObject({
      act: z.literal('known'),
      ...onClient,
      words: plainText
        .refine((text) => text !== '', 'say in a few words what is known')
        .refine((text) => text.length <= LONGEST_KNOWN, `must be at most ${LONGEST_KNOWN} characters`),
    }),
    z.strictObject({ act: z.literal('not-known'), ...onClient }),
    z
      .strictObject({
        act: z.literal('put-aside-many'),
        clientIds: z
          .array(id('a client'), { error: 'must be a list of ids of clients' })
          .min(1, 'choose at least one client')
          .max(MOST_AT_ONCE, `at most ${MOST_AT_ONCE} clients at once`),
        ...untilWhen,
      })
      .refine(hasDate, needsDate),
    z.strictObject({ act: z.literal('undo'), actId: id('an act') }),
  ],
  { error: 'act must be take, put-aside, put-aside-many, done, known, not-known, answer, seen or undo' },
);
export type BoardAct = z.output<typeof boardAct>;
export type ReasonAct = Extract<BoardAct, { act: 'take' | 'put-aside' | 'done' | 'known' | 'not-known' }>;
export type ManyAct = Extract<BoardAct, { act: 'put-aside-many' }>;

const single = (value: unknown) => (Array.isArray(value) ? value[0] : value);
const optional = <Schema extends z.ZodType>(schema: Schema) =>
  z.preprocess(single, schema.optional().catch(undefined));

/** The filter in the board's address. What is not known there is left out: an address is never an error. */
export const boardFilter = z.object({
  group: optional(z.enum(TIERS)),
  reason: optional(z.enum(CHECK_KINDS)),
  skill: optional(z.string().trim().min(1).max(200)),
  q: optional(z.string().trim().min(1).max(200)),
  coach: optional(z.union([z.uuid(), z.literal('mine')])),
});
