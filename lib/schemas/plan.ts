import { z } from 'zod';
import { PLAN_BOUNDS } from '#lib/domain/plan-bounds.ts';
import { PLAN_SESSIONS } from '#lib/domain/plan-sessions.ts';
import { SIDES, SUPPORTS } from '#lib/domain/vocabulary.ts';
import { checkPlan } from './plan-rules.ts';
import { blankIsNull, typedNumber } from './typed.ts';

const date = z.iso.date('write the date as YYYY-MM-DD');
const readOrNull = (value: unknown) => typedNumber(blankIsNull(value));
const words = z.string().trim().max(2_000, 'at most 2,000 letters').default('');
const session = z.enum(PLAN_SESSIONS, 'choose session A, B or short');
const rungOrNone = z.preprocess(blankIsNull, z.uuid('choose a rung of the list, or none').nullable());

const item = z
  .strictObject({
    session,
    rungId: z.uuid('choose a rung'),
    side: z.enum(SIDES, 'choose both, left or right'),
    sets: z.preprocess(
      typedNumber,
      z.int('whole sets').min(1, 'at least 1 set').max(PLAN_BOUNDS.sets, 'at most 30 sets'),
    ),
    target: z.preprocess(
      readOrNull,
      z
        .number('write a number')
        .min(PLAN_BOUNDS.targetFrom, 'at least -360')
        .max(PLAN_BOUNDS.targetTo, 'at most 3,600')
        .nullable(),
    ),
    minutes: z
      .preprocess(
        readOrNull,
        z
          .number('write a number')
          .min(1, 'at least 1 minute')
          .max(PLAN_BOUNDS.minutes, 'at most 240 minutes')
          .nullable(),
      )
      .default(null),
    timesPerWeek: z.preprocess(
      typedNumber,
      z
        .number('write a number')
        .min(0.5, 'at least 0.5 a week')
        .max(PLAN_BOUNDS.timesPerWeek, 'at most 14 a week'),
    ),
    support: z
      .preprocess(blankIsNull, z.enum(SUPPORTS, 'choose a support of the list, or none').nullable())
      .default(null),
    stopRule: z.string().trim().max(300, 'at most 300 letters').default(''),
    notTwoDaysRunning: z.boolean().default(false),
    /** The easier or harder rung of the same ladder done together with this one, as a pyramid. */
    pairedWith: rungOrNone.default(null),
    noKitRungId: rungOrNone.default(null),
  })
  .refine((one) => one.target !== null || one.minutes !== null, {
    path: ['target'],
    message: 'write a target, or minutes of practice',
  });

const planSession = z.strictObject({
  label: session,
  restSeconds: z
    .preprocess(
      readOrNull,
      z.int('whole seconds').min(0, 'at least 0 s').max(PLAN_BOUNDS.restSeconds, 'at most 900 s').nullable(),
    )
    .default(null),
  warmUp: z.string().trim().max(1_000, 'at most 1,000 letters').default(''),
  warmUpMinutes: z
    .preprocess(
      (value) => typedNumber(blankIsNull(value) ?? 0),
      z
        .int('whole minutes')
        .min(0, 'at least 0 minutes')
        .max(PLAN_BOUNDS.warmUpMinutes, 'at most 120 minutes'),
    )
    .default(0),
  minutes: z
    .preprocess(
      readOrNull,
      z.int('whole minutes').min(1, 'at least 1 minute').max(480, 'at most 480 minutes').nullable(),
    )
    .default(null),
});

const weeks = (kind: string) => z.array(date).max(52, `at most 52 ${kind} weeks`).default([]);

/** What a plan says, whoever it is for: also what a kept template holds. */
const planFields = {
  sessionsPerWeek: z.preprocess(
    typedNumber,
    z
      .int('whole sessions')
      .min(1, 'at least 1 session a week')
      .max(PLAN_BOUNDS.sessionsPerWeek, 'at most 14 sessions a week'),
  ),
  notes: words,
  /** In the order in which they are trained; a session that is not named follows the order of the lines. */
  sessions: z.array(planSession).max(PLAN_SESSIONS.length, 'at most three sessions').default([]),
  items: z.array(item).min(1, 'a plan needs at least one drill').max(60, 'at most 60 lines'),
};

/** A new version of a plan. `baseVersion` is the version the coach had open; 0 when there was none. */
export const planSchema = z
  .strictObject({
    ...planFields,
    baseVersion: z.int().min(0),
    from: date,
    until: z.preprocess(blankIsNull, date.nullable()),
    easyWeeks: weeks('easy'),
    testWeeks: weeks('test'),
    noKitWeeks: weeks('no-kit'),
    why: words,
    /** Skills in focus from now on; absent: those of the drills, and the goals stay as they are. */
    goals: z
      .array(
        z.strictObject({
          skillId: z.uuid('choose a skill'),
          wantedBy: z.preprocess(blankIsNull, date.nullable()),
        }),
      )
      .max(20, 'at most 20 skills')
      .optional(),
    /** The foreseen 7-day session load that the coach saw and takes as planned, AU. */
    acceptedWeekAu: z.number().min(0).max(100_000, 'at most 100,000 AU').nullable().default(null),
    /** The draft that was open in the editor. */
    draftId: z.uuid().nullable().default(null),
  })
  .superRefine(checkPlan);
export type PlanInput = z.infer<typeof planSchema>;
export type PlanItemInput = PlanInput['items'][number];
export type PlanSessionInput = PlanInput['sessions'][number];

/** A plan kept for other clients: a name, and the plan without dates, goals and words of one client. */
export const planTemplateSchema = z.strictObject({
  name: z.string().trim().min(1, 'write a name').max(100, 'at most 100 letters'),
  body: z.strictObject(planFields),
});
export type PlanTemplateInput = z.infer<typeof planTemplateSchema>;
