import { z } from 'zod';
import { GAP_KIT } from '#lib/domain/gap-kit.ts';
import { PLAN_SESSIONS } from '#lib/domain/plan-sessions.ts';
import { SIDES } from '#lib/domain/vocabulary.ts';
import { FILM_SHOWS } from '#lib/planning/gaps/gap-types.ts';
import { blankIsNull } from './typed.ts';

const read = (value: unknown) => {
  const given = blankIsNull(value);
  return typeof given === 'string' ? Number(given.trim().replace(',', '.')) : given;
};
const rungOrNone = z.preprocess(blankIsNull, z.uuid('choose a rung').nullable());

const side = z
  .strictObject({
    side: z.enum(SIDES, 'choose both, left or right'),
    film: z.enum(FILM_SHOWS, 'say what the film shows').default('not-seen'),
    rungId: rungOrNone,
    sets: z.preprocess(
      read,
      z.int('whole sets or tries').min(1, 'at least 1').max(100, 'at most 100').nullable(),
    ),
    value: z.preprocess(
      read,
      z.number('write a number').min(-360, 'at least -360').max(3_600, 'at most 3,600').nullable(),
    ),
    clean: z.boolean('say clean or not').nullable().default(null),
    pain: z.preprocess(
      read,
      z.int('a whole number from 0 to 10').min(0, 'from 0 to 10').max(10, 'from 0 to 10').nullable(),
    ),
  })
  .refine((one) => one.rungId !== null || (one.value === null && one.sets === null), {
    path: ['rungId'],
    message: 'choose the rung this result was on',
  });

const part = z.strictObject({
  ladderId: z.uuid(),
  askedRungId: z.uuid('choose the rung that is asked'),
  sides: z.array(side).min(1).max(2),
});

/** An assessment as the form sends it and as it is kept. Numbers may come as text; a decimal comma is read. */
export const assessmentSchema = z.strictObject({
  skillId: z.uuid('choose a skill'),
  aimRungId: z.uuid('choose what the client wants to be able to do'),
  kit: z.array(z.enum(GAP_KIT, 'this kit is not known')).max(GAP_KIT.length).default([]),
  sessions: z
    .array(z.enum(PLAN_SESSIONS, 'choose session A, B or short'))
    .min(1, 'choose at least one session to put drills in'),
  under18Allowed: z.boolean().default(false),
  parts: z.array(part).min(1, 'an assessment has at least one part').max(60, 'at most 60 parts'),
});
export type AssessmentInput = z.infer<typeof assessmentSchema>;

const given = z
  .preprocess((value) => (value === '' ? undefined : value), z.uuid().optional())
  .catch(undefined);
/** What the page is opened with: a saved assessment, or a skill and an aim to begin one. Anything else is nothing. */
export const gapAddress = z.object({ skill: given, aim: given, assessment: given });
export type GapAddress = z.infer<typeof gapAddress>;

export const draftOfAssessment = z.strictObject({ assessmentId: z.uuid() });
