import { z } from 'zod';
import { GAP_KIT } from '#lib/domain/gap-kit.ts';
import type { IntakeDraft } from '#lib/domain/intake/draft.ts';
import { HEALTH_QUESTIONS } from '#lib/domain/intake/health-questions.ts';
import { TOLD_AT_START } from '#lib/domain/intake/told-at-start.ts';
import { DANGER_SIGNS, GROUNDS, PAIN_REGIONS, PAIN_SIDES } from '#lib/domain/vocabulary.ts';
import { plainText } from './plain-text.ts';
import { typedNumber } from './typed.ts';

const MOST_PLACES = 30;
const typed = z.string().max(40, 'is longer than 40 letters: shorten it');
const line = z.string().max(200, 'is longer than 200 letters: shorten it');
const words = z.string().max(2_000, 'is longer than 2,000 letters: shorten it');
const yesNo = z.enum(['yes', 'no']);
const tenth = z.int('must be a whole number').min(0, 'at least 0').max(10, 'at most 10');
const signs = z.array(z.enum(DANGER_SIGNS)).max(DANGER_SIGNS.length);
const skills = z.array(z.string().max(120)).max(20, 'at most 20 skills');
const kit = z.array(z.enum(GAP_KIT)).max(GAP_KIT.length);

const page = <Page extends z.ZodRawShape>(shape: Page) =>
  z.strictObject({ at: z.iso.datetime('must be an instant'), page: z.strictObject(shape) }).optional();

/** The pages as the phone keeps them: whatever was typed, within bounds. What it comes to is judged when it is sent. */
export const intakeDraftSchema = z.strictObject({
  you: page({
    adult: yesNo.nullable(),
    birthYear: typed,
    bodyMassKg: typed,
    guardianName: line,
    guardianEmail: line,
  }),
  health: page({ said: z.partialRecord(z.enum(HEALTH_QUESTIONS), yesNo), words }),
  signs: page({ none: z.boolean(), signs }),
  pain: page({
    nothing: z.boolean(),
    places: z
      .array(
        z.strictObject({
          region: z.enum(PAIN_REGIONS),
          side: z.enum(PAIN_SIDES),
          value: tenth.nullable(),
          sinceWeeks: typed,
        }),
      )
      .max(MOST_PLACES, `at most ${MOST_PLACES} places`),
  }),
  week: page({
    trains: yesNo.nullable(),
    breakWeeks: typed,
    days: typed,
    minutes: typed,
    effort: tenth.nullable(),
    otherSport: words,
    job: words,
  }),
  kit: page({ kit, ground: z.enum(GROUNDS).nullable() }),
  goals: page({ skills, goal: words, why: words }),
}) satisfies z.ZodType<IntakeDraft>;

export const intakeSavedSchema = z.strictObject({ draft: intakeDraftSchema });
/** `key`: made by the phone, so that one intake is taken once however often it is sent. */
export const intakeSentSchema = z.strictObject({ key: z.uuid('must be an id'), draft: intakeDraftSchema });
export type IntakeSent = { key: string; draft: IntakeDraft };

const told = z.string().max(10_000);
/** Answers as they are kept; each is left out where another team or an older form wrote it otherwise. */
export const keptAnswers = z.object({
  adult: z.boolean().optional().catch(undefined),
  birthYear: z.number().optional().catch(undefined),
  bodyMassKg: z.number().nullable().optional().catch(undefined),
  health: z.array(z.enum(HEALTH_QUESTIONS)).optional().catch(undefined),
  healthWords: told.optional().catch(undefined),
  dangerSigns: z.array(z.enum(DANGER_SIGNS)).optional().catch(undefined),
  pain: z
    .array(
      z.object({
        region: z.enum(PAIN_REGIONS),
        side: z.enum(PAIN_SIDES),
        value: z.number(),
        sinceWeeks: z.number(),
      }),
    )
    .optional()
    .catch(undefined),
  week: z.object({ days: z.number(), minutes: z.number(), effort: z.number() }).optional().catch(undefined),
  breakWeeks: z.number().optional().catch(undefined),
  otherSport: told.optional().catch(undefined),
  job: told.optional().catch(undefined),
  kit: z.array(z.string()).optional().catch(undefined),
  ground: z.enum(GROUNDS).nullable().optional().catch(undefined),
  skills: z.array(z.string()).optional().catch(undefined),
  goal: told.optional().catch(undefined),
  why: told.optional().catch(undefined),
});
export type KeptAnswers = z.infer<typeof keptAnswers>;

/** What a coach changed afterwards. */
export const keptChanges = z
  .array(
    z.object({
      at: z.string(),
      by: z.string(),
      field: z.string(),
      before: z.json(),
      after: z.json(),
      why: z.string(),
    }),
  )
  .catch([]);
export type KeptChange = z.infer<typeof keptChanges>[number];

const number = (schema: z.ZodType<number>) => z.preprocess(typedNumber, schema);
const why = plainText
  .refine((text) => text !== '', 'say why, for the record')
  .refine((text) => text.length <= 500, 'is longer than 500 letters: shorten it');
const change = <Field extends string, Value extends z.ZodType>(field: Field, value: Value) =>
  z.strictObject({ field: z.literal(field), value, why });

/** One answer that a coach changes. Pain, signs and a health question only ever gain: what was told stays told. */
export const intakeChangeSchema = z.discriminatedUnion('field', [
  change('birthYear', number(z.int('a whole year').min(1900, 'at least 1900').max(2100, 'at most 2100'))),
  change(
    'bodyMassKg',
    number(z.number('write a number').min(20, 'at least 20 kg').max(300, 'at most 300 kg')),
  ),
  change('breakWeeks', number(z.number('write a number').min(0, 'at least 0').max(1_040, 'at most 1,040'))),
  change('healthYes', z.enum(HEALTH_QUESTIONS, 'choose a question')),
  change(
    'week',
    z.strictObject({
      days: number(z.int('whole days').min(0, 'at least 0').max(7, 'at most 7 days')),
      minutes: number(z.number('write a number').min(0, 'at least 0').max(300, 'at most 300 minutes')),
      effort: number(tenth),
    }),
  ),
  change('otherSport', words),
  change('job', words),
  change('goal', words),
]);
export type IntakeChange = z.infer<typeof intakeChangeSchema>;

export const toldAtStart = z.enum(TOLD_AT_START, 'choose what it is about');
