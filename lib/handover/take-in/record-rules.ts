import { z } from 'zod';
import { SINCE_OUTCOMES } from '#lib/checks/better-since/types.ts';
import { CONSENT_KINDS } from '#lib/domain/consent.ts';
import { TOLD_AT_START } from '#lib/domain/intake/told-at-start.ts';
import {
  CHECK_KINDS,
  CLIP_STATES,
  CLIP_VERDICTS,
  DANGER_SIGNS,
  FAMILIES,
  FAULTS,
  GROUNDS,
  LEVELS,
  LIMIT_RULES,
  MEASURES,
  PAIN_KINDS,
  PAIN_MOMENTS,
  STANDINGS,
  SUPPORTS,
  TIERS,
  TISSUES,
} from '#lib/domain/vocabulary.ts';
import { assessmentSchema } from '#lib/schemas/assessment.ts';
import { amount, painSide, region, result, side, tenth, zone } from '#lib/schemas/history-values.ts';
import { placedSchema, startAims, startAnswers, startTests } from '#lib/schemas/start-tests.ts';

// What the pages and the checks rely on, beyond the kinds of values that the file's own schema asks for.

const support = z.enum(SUPPORTS).nullable();
const faults = z.array(z.enum(FAULTS)).nullable();
const standing = z.enum(STANDINGS);
const outcome = z.enum(SINCE_OUTCOMES);
const share = z.number().min(0).max(5).nullable();
const name = z.string().trim().min(1, 'must not be empty').max(300);
const place = { region: region.nullable(), side: painSide.nullable() };
const fact = z.object({ name: z.string(), value: z.union([z.number(), z.string()]), unit: z.string() });
const threshold = z.object({
  id: z.string(),
  value: z.number(),
  unit: z.string(),
  meaning: z.string(),
  source: z.string(),
});

const told = z.object({
  what: z.string(),
  unit: z.string(),
  before: z.number().nullable(),
  after: z.number().nullable(),
  said: z.string(),
  changes: z.array(z.string()),
});

/** What was said yes to at the start: an unknown one would be held for good. */
const toldYes = z.enum(TOLD_AT_START).nullable();

type Rules = Readonly<Record<string, Readonly<Record<string, z.ZodType>>>>;

/** By table and column. */
export const RECORD_RULES: Rules = {
  client: { name: z.string().trim().min(1, 'must not be empty').max(200), zone, standing },
  consent: { kind: z.enum(CONSENT_KINDS) },
  limit_rule: {
    ...place,
    tissue: z.enum(TISSUES).nullable(),
    rule: z.enum(LIMIT_RULES),
    told: toldYes,
    percent: z.number().min(0).max(100).nullable(),
  },
  clinician_word: { ...place, told: toldYes },
  absence: { kind: z.enum(['pause', 'holiday', 'illness']) },
  standing_change: { before: standing, after: standing },
  assessment: { answers: assessmentSchema },
  start_tests: { aims: startAims, tests: startTests, answers: startAnswers, placed: placedSchema.nullable() },
  placement: { side },
  plan: { version: z.int().min(1).max(100_000), sessions_per_week: z.int().min(0).max(50) },
  plan_item: { side, support, sets: z.int().min(0).max(100), target: result.nullable() },
  check_in: {
    zone,
    kind: z.enum(['training', 'rest']),
    effort: tenth.nullable(),
    minutes: z.number().min(0).max(1_440).nullable(),
    ground: z.enum(GROUNDS).nullable(),
    sleep_hours: z.number().min(0).max(24).nullable(),
  },
  check_in_set: {
    side,
    support,
    faults,
    how: z.enum(['typed', 'timed', 'as-planned', 'not-done']),
    planned: result.nullable(),
    value: result.nullable(),
    idx: z.int().min(0).max(1_000),
    added_kg: z.number().min(-300).max(500).nullable(),
  },
  pain_score: {
    region,
    side: painSide,
    moment: z.enum(PAIN_MOMENTS),
    value: tenth,
    kind: z.enum(PAIN_KINDS),
  },
  danger_sign_told: { ...place, sign: z.enum(DANGER_SIGNS) },
  film_request: { side },
  set_verdict: { faults, side, verdict: z.enum(CLIP_VERDICTS) },
  clip: { faults, side, state: z.enum(CLIP_STATES), verdict: z.enum(CLIP_VERDICTS).nullable() },
  reason: {
    kind: z.enum(CHECK_KINDS),
    level: z.enum(LEVELS),
    tier: z.enum(TIERS).nullable(),
    subject: z.object({ key: z.string(), label: z.string() }),
    step: z.object({ kind: z.string(), text: z.string() }),
    evidence: z.record(z.string(), z.union([z.number(), z.string(), z.boolean(), z.null()])),
    working: z.object({
      inputs: z.array(fact),
      formula: z.string(),
      thresholds: z.array(threshold),
      daysKnown: z.object({ known: z.number(), of: z.number() }).nullable(),
      doubt: z.string(),
    }),
  },
  reason_event: { level: z.enum(LEVELS).nullable(), body: z.record(z.string(), z.json()) },
  step_outcome: { outcome, evidence: told },
  reason_outcome: { outcome, evidence: told },
  intake: { answers: z.record(z.string(), z.json()) },
  team_settings: { values: z.record(z.string(), z.number()) },
  member: { name },
  skill: { name },
  part: { name },
  ladder: { name, family: z.enum(FAMILIES), faults },
  drill: {
    name,
    family: z.enum(FAMILIES).nullable(),
    measure: z.enum(MEASURES),
    share,
    helping_share: share,
    seconds_per_rep: amount.nullable(),
    weights: z.partialRecord(z.enum(TISSUES), z.number().min(0).max(1)),
  },
  rung: {
    name,
    pass_sets: z.int().min(1).max(100),
    pass_target: result,
    pass_days: z.int().min(1).max(100),
    usual_weeks: amount,
  },
};
