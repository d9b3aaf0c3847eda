import { z } from 'zod';
import { PLAN_SESSIONS } from '#lib/domain/plan-sessions.ts';
import { SIDES } from '#lib/domain/vocabulary.ts';

const date = z.iso.date('write the date as YYYY-MM-DD');
const blankIsNull = (value: unknown) => (value === '' || value === undefined ? null : value);
const read = (value: unknown) =>
  typeof value === 'string' && value.trim() !== '' ? Number(value.replace(',', '.')) : value;

const item = z
  .strictObject({
    session: z.enum(PLAN_SESSIONS, 'choose session A, B or short'),
    rungId: z.uuid('choose a rung'),
    side: z.enum(SIDES, 'choose both, left or right'),
    sets: z.preprocess(read, z.int('whole sets').min(1, 'at least 1 set').max(30, 'at most 30 sets')),
    target: z.preprocess(
      (value) => read(blankIsNull(value)),
      z.number('write a number').min(-360, 'at least -360').max(3_600, 'at most 3,600').nullable(),
    ),
    minutes: z
      .preprocess(
        (value) => read(blankIsNull(value)),
        z.number('write a number').min(1, 'at least 1 minute').max(240, 'at most 240 minutes').nullable(),
      )
      .default(null),
    timesPerWeek: z.preprocess(
      read,
      z.number('write a number').min(0.5, 'at least 0.5 a week').max(14, 'at most 14 a week'),
    ),
  })
  .refine((one) => one.target !== null || one.minutes !== null, {
    path: ['target'],
    message: 'write a target, or minutes of practice',
  });

/** A new version of a plan. `baseVersion` is the version the coach had open; 0 when there was none. */
export const planSchema = z
  .strictObject({
    baseVersion: z.int().min(0),
    from: date,
    until: z.preprocess(blankIsNull, date.nullable()),
    sessionsPerWeek: z.preprocess(
      read,
      z.int('whole sessions').min(1, 'at least 1 session a week').max(14, 'at most 14 sessions a week'),
    ),
    easyWeeks: z.array(date).max(52, 'at most 52 easy weeks').default([]),
    testWeeks: z.array(date).max(52, 'at most 52 test weeks').default([]),
    why: z.string().trim().max(2_000, 'at most 2,000 letters').default(''),
    notes: z.string().trim().max(2_000, 'at most 2,000 letters').default(''),
    items: z.array(item).min(1, 'a plan needs at least one drill').max(60, 'at most 60 lines'),
  })
  .superRefine((plan, context) => {
    if (plan.until !== null && plan.until < plan.from) {
      context.addIssue({ code: 'custom', path: ['until'], message: 'is before the first day' });
    }
    for (const [index, week] of plan.easyWeeks.entries()) {
      if (week < plan.from || (plan.until !== null && week > plan.until)) {
        context.addIssue({
          code: 'custom',
          path: ['easyWeeks', index],
          message: `${week} is outside the plan`,
        });
      }
    }
    const seen = new Set<string>();
    for (const [index, one] of plan.items.entries()) {
      const key = `${one.session} ${one.rungId} ${one.side}`;
      if (seen.has(key)) {
        context.addIssue({
          code: 'custom',
          path: ['items', index, 'rungId'],
          message: `is already in session ${one.session} for this side`,
        });
      }
      seen.add(key);
    }
  });
export type PlanInput = z.infer<typeof planSchema>;
export type PlanItemInput = PlanInput['items'][number];
