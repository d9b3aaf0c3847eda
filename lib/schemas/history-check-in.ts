import { z } from 'zod';
import {
  CLIP_VERDICTS,
  DANGER_SIGNS,
  FAULTS,
  GROUNDS,
  PAIN_KINDS,
  PAIN_MOMENTS,
  SUPPORTS,
} from '#lib/domain/vocabulary.ts';
import {
  id,
  instant,
  localDate,
  painSide,
  region,
  result,
  side,
  tenth,
  words,
  zone,
} from './history-values.ts';

const set = z.strictObject({
  rungId: id,
  side,
  index: z.int().min(0).max(1_000),
  planned: result.nullable(),
  value: result.nullable().describe('Seconds, reps, degrees or cm; null: not done'),
  tried: z.int().min(0).max(10_000).nullable(),
  how: z.enum(['typed', 'timed', 'as-planned', 'not-done']),
  clean: z.boolean(),
  faults: z.array(z.enum(FAULTS)),
  support: z.enum(SUPPORTS).nullable(),
  addedKg: z.number().min(-300).max(500).nullable(),
  onFilm: z
    .strictObject({
      verdict: z.enum(CLIP_VERDICTS),
      faults: z.array(z.enum(FAULTS)),
      told: z.strictObject({ clean: z.boolean(), faults: z.array(z.enum(FAULTS)) }),
    })
    .optional()
    .describe('Seen by a coach on film: clean and faults are then what counts, told what the client said'),
});
const pain = z.strictObject({
  region,
  side: painSide,
  moment: z.enum(PAIN_MOMENTS),
  value: tenth.describe('Pain score, whole number 0-10'),
  kind: z.enum(PAIN_KINDS),
  usual: z.boolean().nullable(),
});
export const checkIn = z.strictObject({
  id,
  date: localDate,
  zone,
  sentAt: instant,
  kind: z.enum(['training', 'rest']),
  session: z.string().max(50).nullable(),
  effort: tenth.nullable().describe('How hard, 0-10'),
  minutes: z.number().min(0).max(1_440).nullable(),
  ground: z.enum(GROUNDS).nullable(),
  sleepHours: z.number().min(0).max(24).nullable(),
  nothingHurts: z.boolean(),
  sets: z.array(set),
  pain: z.array(pain),
  dangerSigns: z.array(
    z.strictObject({
      sign: z.enum(DANGER_SIGNS),
      goneWithinMinute: z.boolean(),
      region: region.nullable(),
      side: painSide.nullable(),
    }),
  ),
  words,
});
