import { z } from 'zod';
import { PLAN_SESSIONS } from '#lib/domain/plan-sessions.ts';
import { SIDES, SUPPORTS } from '#lib/domain/vocabulary.ts';
import { DRAFT_SOURCES } from '#lib/views/plan-draft.ts';

const line = z
  .strictObject({
    act: z.enum(['put', 'drop'], 'choose put or drop').default('put'),
    session: z.enum(PLAN_SESSIONS, 'choose session A, B or short'),
    rungId: z.uuid('choose a rung'),
    side: z.enum(SIDES, 'choose both, left or right'),
    sets: z.int('whole sets').min(1, 'at least 1 set').max(30, 'at most 30 sets'),
    target: z.number().min(-360, 'at least -360').max(3_600, 'at most 3,600').nullable(),
    minutes: z.number().min(1, 'at least 1 minute').max(240, 'at most 240 minutes').nullable().default(null),
    timesPerWeek: z.number().min(0.5, 'at least 0.5 a week').max(14, 'at most 14 a week'),
    support: z.enum(SUPPORTS, 'choose a support').nullish(),
    replaces: z.uuid('choose a rung').nullish(),
    pairedWith: z.uuid('choose a rung').nullish(),
    why: z.string().trim().max(1_000, 'at most 1,000 letters').default(''),
  })
  .refine((one) => one.act === 'drop' || one.target !== null || one.minutes !== null, {
    path: ['target'],
    message: 'write a target, or minutes of practice',
  });

/** What a draft of a plan says; also the shape in which it is kept. */
export const planDraftSchema = z
  .strictObject({
    source: z.enum(DRAFT_SOURCES),
    reasonId: z.uuid().nullable().default(null),
    lines: z.array(line).max(60, 'at most 60 lines'),
    why: z.string().trim().max(2_000, 'at most 2,000 letters').default(''),
    notes: z.string().trim().max(2_000, 'at most 2,000 letters').default(''),
    dropSkills: z.array(z.string().max(200)).max(20, 'at most 20 skills').default([]),
    easyWeeks: z.array(z.int().min(1).max(52)).max(52, 'at most 52 weeks').default([]),
    later: z.array(z.string().max(300)).max(12, 'at most 12 later versions').optional(),
  })
  .refine((draft) => draft.lines.length + draft.dropSkills.length + draft.easyWeeks.length > 0, {
    path: ['lines'],
    message: 'propose at least one line, a skill to drop or an easy week',
  });
export type PlanDraftInput = z.input<typeof planDraftSchema>;
