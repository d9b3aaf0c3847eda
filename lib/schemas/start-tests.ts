import { z } from 'zod';
import { GAP_KIT } from '#lib/domain/gap-kit.ts';
import { PAIN_REGIONS, SIDES } from '#lib/domain/vocabulary.ts';
import { START_OUTCOMES } from '#lib/planning/start/start-types.ts';
import { blankIsNull, typedNumber } from './typed.ts';

const number = z.preprocess(
  typedNumber,
  z.number('write a number').min(-360, 'at least -360').max(3_600, 'at most 3,600'),
);
const MOST_SETS = 30;
const MOST_TESTS = 60;

const aim = z.strictObject({
  skillId: z.uuid('choose a skill'),
  aimRungId: z.uuid('choose what the client wants to be able to do'),
});
const test = z.strictObject({
  ladderId: z.uuid('choose a ladder'),
  rungId: z.uuid('choose a rung'),
  sets: z.int('whole sets or tries').min(1, 'at least 1').max(MOST_SETS, 'at most 30'),
  film: z.boolean().default(false),
});

/** Start tests as a coach sends them, and as they are kept. */
export const startAims = z.array(aim).min(1, 'choose at least one skill').max(10, 'at most 10 skills');
export const startTests = z.array(test).min(1, 'ask at least one test').max(MOST_TESTS, 'at most 60 tests');
export const startKit = z.array(z.enum(GAP_KIT, 'this kit is not known')).max(GAP_KIT.length);
export const askStartTestsSchema = z.strictObject({
  aims: startAims,
  kit: startKit.default([]),
  under18Allowed: z.boolean().default(false),
  tests: startTests,
  words: z.string().trim().max(1_000, 'at most 1,000 letters').default(''),
});
export type AskStartTests = z.infer<typeof askStartTestsSchema>;

/** What a client says of one test on one side, as the phone sends it and as it is kept. */
export const startAnswer = z
  .strictObject({
    ladderId: z.uuid(),
    rungId: z.uuid(),
    side: z.enum(SIDES, 'choose both, left or right'),
    outcome: z.enum(START_OUTCOMES, 'say done, cannot yet or it hurts'),
    values: z.array(number).max(MOST_SETS, 'at most 30 sets').default([]),
    tried: z.preprocess(
      blankIsNull,
      z.int('whole tries').min(1, 'at least 1').max(MOST_SETS, 'at most 30').nullable(),
    ),
    clean: z.boolean('say clean or not').nullable().default(null),
    pain: z.preprocess(
      blankIsNull,
      z.int('a whole number from 0 to 10').min(0, 'from 0 to 10').max(10, 'from 0 to 10').nullable(),
    ),
    region: z.preprocess(blankIsNull, z.enum(PAIN_REGIONS, 'choose where it hurts').nullable()),
  })
  .refine((one) => one.outcome !== 'done' || one.values.length > 0, {
    path: ['values'],
    message: 'write what was done, or choose “cannot yet”',
  })
  .refine((one) => one.outcome !== 'hurts' || one.pain !== null, {
    path: ['pain'],
    message: 'say how much it hurts, from 0 to 10',
  });
export const startAnswers = z.array(startAnswer).max(MOST_TESTS * 2);

/** One step of the phone: an answer, or one taken back (`answer` null). */
export const answerStartTest = z.strictObject({
  ladderId: z.uuid(),
  rungId: z.uuid(),
  side: z.enum(SIDES, 'choose both, left or right'),
  answer: startAnswer.nullable(),
});
export type AnswerStartTest = z.infer<typeof answerStartTest>;

/** The coach's placing: a rung a ladder and side; null: stands on none. */
export const placeStartTests = z.strictObject({
  places: z
    .array(
      z.strictObject({
        ladderId: z.uuid(),
        side: z.enum(SIDES, 'choose both, left or right'),
        rungId: z.preprocess(blankIsNull, z.uuid('choose a rung of the list, or none').nullable()),
      }),
    )
    .min(1, 'place the client on at least one ladder')
    .max(120),
});
export type PlaceStartTests = z.infer<typeof placeStartTests>;

/** The start plan: from which kept plan (none: the fewest drills), opened as a draft or saved. */
export const planOfTests = z.strictObject({
  templateId: z.preprocess(blankIsNull, z.uuid('choose a kept plan').nullable()),
  how: z.enum(['draft', 'save'], 'open it as a draft, or save it'),
});
export type PlanOfTests = z.infer<typeof planOfTests>;

/** What one placing wrote, as it is kept for the way back. */
const placement = z.strictObject({
  ladderId: z.uuid(),
  side: z.enum(SIDES),
  rungId: z.uuid(),
  from: z.iso.date(),
  why: z.string(),
});
export const placedSchema = z.strictObject({
  byId: z.uuid(),
  from: z.iso.date(),
  planVersion: z.int().min(0),
  placements: z.array(placement),
  before: z.array(placement),
});
export type Placed = z.infer<typeof placedSchema>;

export const startAddress = z.object({ clientId: z.uuid(), testsId: z.uuid() });
const several = z
  .preprocess((value) => (value === undefined ? [] : [value].flat()), z.array(z.uuid()).max(20))
  .catch([]);
const kitAsked = z
  .preprocess((value) => (value === undefined ? undefined : [value].flat()), z.array(z.string()).optional())
  .catch(undefined);
/** What the start page of a client is opened with: skills and aims to ask tests for, and the kit at hand. */
export const startAsked = z.object({
  skill: several,
  aim: several,
  kit: kitAsked,
  /** The form was sent: no tick is then no kit. */
  asked: z.string().optional().catch(undefined),
});
export type StartAsked = z.infer<typeof startAsked>;
