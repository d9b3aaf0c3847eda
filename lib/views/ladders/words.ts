import type { Family, Measure } from '#lib/domain/vocabulary.ts';

/** What kind of stress a ladder is, as a coach says it. */
export const FAMILY_WORDS: Record<Family, string> = {
  'bent-arm-push': 'pushing, bent arms',
  'bent-arm-pull': 'pulling, bent arms',
  'straight-arm-push': 'pushing, straight arms',
  'straight-arm-pull': 'pulling, straight arms',
  balance: 'balance',
  mobility: 'mobility',
};

/** How a rung is counted. */
export const MEASURE_WORDS: Record<Measure, string> = {
  hold: 'a hold, in seconds',
  reps: 'reps',
  lowering: 'a slow lowering, in seconds',
  'made-tried': 'tries made',
  'range-up': 'a range in degrees, more is better',
  'range-down': 'a range in cm, less is better',
};

/** What stands behind the number of a pass mark. */
export const TARGET_UNITS: Record<Measure, string> = {
  hold: 's',
  reps: 'reps',
  lowering: 's',
  'made-tried': 'made',
  'range-up': 'degrees',
  'range-down': 'cm',
};
