/** The closed word lists of the trade. Every other layer takes them from here. */

/** Tissues that a rung loads; weight 0-1 each. */
export const TISSUES = [
  'wrist-back',
  'wrist-forward',
  'elbow-bending',
  'elbow-straightening',
  'shoulder-overhead',
  'shoulder-forward',
  'upper-back',
  'hip-flexors',
  'hamstrings',
  'neck',
  'shoulder-behind',
  'low-back',
] as const;
export type Tissue = (typeof TISSUES)[number];

/** Tissues that the hands do not load: exposure counts share 1 for them. */
export const TISSUES_OFF_THE_HANDS: readonly Tissue[] = ['hip-flexors', 'hamstrings', 'low-back'];

export const FAMILIES = [
  'bent-arm-push',
  'bent-arm-pull',
  'straight-arm-push',
  'straight-arm-pull',
  'balance',
  'mobility',
] as const;
export type Family = (typeof FAMILIES)[number];

/** How a rung is counted. `range-up`/`range-down`: degrees or cm, more / less is better. */
export const MEASURES = ['hold', 'reps', 'lowering', 'made-tried', 'range-up', 'range-down'] as const;
export type Measure = (typeof MEASURES)[number];

export const SIDES = ['both', 'left', 'right'] as const;
export type Side = (typeof SIDES)[number];
export const PAIN_SIDES = ['left', 'right', 'middle'] as const;
export type PainSide = (typeof PAIN_SIDES)[number];

export const PAIN_REGIONS = [
  'wrist-back',
  'wrist-palm-side',
  'wrist-thumb-side',
  'wrist-little-finger-side',
  'hand-fingers',
  'elbow-inner',
  'elbow-outer',
  'elbow-front',
  'elbow-back',
  'shoulder-front',
  'shoulder-top',
  'shoulder-side',
  'shoulder-blade',
  'neck',
  'upper-back',
  'ribs',
  'low-back',
  'hip-front',
  'groin',
  'back-of-thigh',
  'knee',
  'ankle-foot',
  'head',
  'eyes',
] as const;
export type PainRegion = (typeof PAIN_REGIONS)[number];

export const PAIN_MOMENTS = ['during', 'after', 'morning', 'today'] as const;
export type PainMoment = (typeof PAIN_MOMENTS)[number];
/** Only `joint` (joint or tendon) feeds the pain checks. */
export const PAIN_KINDS = ['joint', 'muscle', 'skin', 'stretch', 'cramp'] as const;
export type PainKind = (typeof PAIN_KINDS)[number];

export const DANGER_SIGNS = [
  'pain-at-rest-or-night',
  'numb-or-tingling',
  'weakness',
  'swelling',
  'fall-or-pop',
  'dizzy-or-seeing',
  'chest-pain',
  'fainting-or-breath',
  'arm-swollen-blue',
  'worst-headache',
  'flashes-or-curtain',
  'hot-joint-fever',
] as const;
export type DangerSign = (typeof DANGER_SIGNS)[number];

export const FAULTS = [
  'hips-turn',
  'shoulder-sinks',
  'shoulders-uneven',
  'elbow-bends',
  'ribs-open',
  'hips-drop',
  'legs-part',
  'hands-walk',
  'came-off',
  'turned-out',
  'stopped-by-pain',
] as const;
export type Fault = (typeof FAULTS)[number];

export const GROUNDS = ['hard-floor', 'mat', 'sprung-floor', 'grass', 'sand', 'thick-mat'] as const;
export type Ground = (typeof GROUNDS)[number];
export const SOFT_GROUNDS: readonly Ground[] = ['sprung-floor', 'grass', 'sand', 'thick-mat'];

/** What a limit says: nothing for the place, less of it, no hands on the floor, nothing overhead, nothing upside down. */
export const LIMIT_RULES = ['none', 'reduced', 'no-floor', 'no-overhead', 'no-upside-down'] as const;
export type LimitRule = (typeof LIMIT_RULES)[number];

export const SUPPORTS = [
  'hard-floor',
  'hands-turned-out',
  'wedge',
  'parallel-bars',
  'fists',
  'rings',
  'soft-ground',
  'bar',
  'bar-straps',
] as const;
export type Support = (typeof SUPPORTS)[number];

export const STANDINGS = ['invited', 'starting', 'in-training', 'paused', 'ending', 'left', 'back'] as const;
export type Standing = (typeof STANDINGS)[number];

export const CHECK_KINDS = [
  'danger-sign',
  'pain-high',
  'pain-rising',
  'pain-lingering',
  'pain-after-ground',
  'load-jump',
  'new-hardest',
  'stacked-stress',
  'no-let-up',
  'return-too-fast',
  'too-many-goals',
  'too-hard',
  'plan-outgrown',
  'stalled',
  'slipping',
  'too-little-time',
  'window-gap',
  'side-gap',
  'one-side-fault',
  'gone-quiet',
  'fading',
  'question-waiting',
  'film-waiting',
  'plan-ending',
  'not-seen',
  'asked-no-answer',
  'limit-ending',
  'step-up-earned',
] as const;
export type CheckKind = (typeof CHECK_KINDS)[number];

/** From where a film is taken; an open set: a team that asks in other words keeps them. */
export const FILM_ANGLES = ['from the side', 'from behind', 'from the front'] as const;
/** Where a clip stands on its way: coming in, being decoded, to be looked at, not taken, no longer kept. */
export const CLIP_STATES = ['arriving', 'checking', 'ready', 'refused', 'gone'] as const;
export type ClipState = (typeof CLIP_STATES)[number];
export const CLIP_VERDICTS = ['clean', 'not-clean', 'cannot-see'] as const;
export type ClipVerdict = (typeof CLIP_VERDICTS)[number];

export const LEVELS = ['note', 'watch', 'act'] as const;
export type Level = (typeof LEVELS)[number];
export const TIERS = ['now', 'today', 'this-week', 'good-news'] as const;
export type Tier = (typeof TIERS)[number];

export const ROLES = ['lead', 'coach', 'assistant', 'client', 'guardian'] as const;
export type Role = (typeof ROLES)[number];
