import { type LimitId, THRESHOLDS } from '../thresholds.ts';

/** What a team may set a number to. `kept`: why it may not be set at all; `stricter`: why only to this side. */
export type Bounds = { min: number; max: number; whole: boolean; kept?: string; stricter?: string };

const URGENT = 'what is urgent is the same for everybody';
const MEASURED = 'how often the ranges hold was measured with this number';
const SHARED = 'limits and swaps on the phone and in the ladders go by it too';
const DEFINED = 'part of how the figure is defined';
const COMPARED = 'one month could not be set against another';

/** By the first part of the name, or by the whole name. */
const KEPT: Readonly<Record<string, string>> = {
  dangerSign: URGENT,
  points: URGENT,
  'grade.under18Stricter': 'under 18 stays one step stricter',
  forecast: MEASURED,
  'tissue.loaded': SHARED,
  'day.lookBackDays': SHARED,
  'day.lookBackStep': SHARED,
  'week.days': DEFINED,
  'monotony.days': DEFINED,
  ewma: DEFINED,
  betterSince: COMPARED,
};

/** Numbers that guard somebody: the default is the loosest they can be. */
const STRICTER: Readonly<Partial<Record<LimitId, { side: 'min' | 'max'; why: string }>>> = {
  'grade.stop': { side: 'max', why: 'pain of 6 or more is high for everybody' },
  'painHigh.from': { side: 'max', why: 'pain of 6 or more is high for everybody' },
  'painHigh.clearAt': { side: 'max', why: 'high pain is cleared by 4 or less' },
  'painHigh.clearCheckIns': { side: 'min', why: 'one check-in alone does not clear high pain' },
  'stepUpEarned.maxPain': { side: 'max', why: 'no step up over pain' },
  'noLetUp.restDaysUnder18': { side: 'max', why: 'under 18 one rest day a week' },
};

const COUNT = { min: 1, max: 60, whole: true };
const TIMES = { min: 0.05, max: 10, whole: false };
const SCALE = { min: 0, max: 10, whole: true };
const SHARE = { min: 0.01, max: 1, whole: false };

const BY_UNIT: Readonly<Record<string, Bounds>> = {
  '%': { min: 1, max: 100, whole: false },
  '% of the target in 28 days': { min: 0, max: 100, whole: false },
  AU: { min: 0, max: 10_000, whole: false },
  'BW s': { min: 0, max: 10_000, whole: false },
  days: { min: 1, max: 400, whole: true },
  'days ago': { min: 1, max: 400, whole: true },
  draws: { min: 100, max: 100_000, whole: true },
  'effort 0-10': SCALE,
  h: { min: 1, max: 168, whole: false },
  'h in answering hours': { min: 1, max: 336, whole: false },
  nights: { min: 1, max: 14, whole: true },
  'no unit': { min: 1, max: 10, whole: false },
  'pain 0-10': SCALE,
  points: { min: 0, max: 10, whole: false },
  'points added up': { min: 1, max: 50, whole: false },
  'points of %': { min: 0, max: 100, whole: false },
  probability: { min: 0.0001, max: 0.2, whole: false },
  reps: { min: 1, max: 1000, whole: true },
  s: { min: 1, max: 3600, whole: false },
  'soreness 0-10': SCALE,
  'weight 0-1': SHARE,
};

/** What one number may be set to. Pure; every threshold has bounds, and its default lies within them. */
export function boundsOf(id: LimitId): Bounds {
  const { unit, value } = THRESHOLDS[id];
  const plain = BY_UNIT[unit] ?? byWords(unit);
  const kept = KEPT[id] ?? KEPT[id.split('.')[0] ?? ''];
  if (kept !== undefined) return { ...plain, kept };
  const guard = STRICTER[id];
  // A default of 0 is allowed where the unit starts at 1.
  const bounds = { ...plain, min: Math.min(plain.min, value) };
  return guard ? { ...bounds, [guard.side]: value, stricter: guard.why } : bounds;
}

function byWords(unit: string): Bounds {
  if (unit.startsWith('share')) return SHARE;
  return unit.startsWith('x ') || unit.startsWith('SD ') ? TIMES : COUNT;
}
