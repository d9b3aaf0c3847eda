import { isLimitId, type LimitId, type Limits, limitsWith, THRESHOLDS } from '../thresholds.ts';
import { boundsOf } from './bounds.ts';

/** Pairs in which the first may not be larger than the second. */
const NOT_OVER: readonly (readonly [LimitId, LimitId])[] = [
  ['painRising.watch', 'painRising.act'],
  ['painHigh.clearAt', 'painHigh.from'],
  ['grade.careful', 'grade.stop'],
  ['usualPain.fromDays', 'usualPain.toDays'],
  ['sideGap.watchPercent', 'sideGap.actPercent'],
  ['sideGap.lastPairs', 'sideGap.pairs'],
  ['questionWaiting.watchHours', 'questionWaiting.actHours'],
  ['filmWaiting.watchHours', 'filmWaiting.actHours'],
  ['goneQuiet.watchDays', 'goneQuiet.actDays'],
  ['goneQuiet.watchGap', 'goneQuiet.actGap'],
  ['fading.days', 'fading.beforeDays'],
  ['week.usualAtLeast', 'week.usualOf'],
  ['week.usualOf', 'week.usualAmong'],
  ['loadJump.sessionEach', 'loadJump.sessionMean'],
  ['loadJump.setsEach', 'loadJump.setsMean'],
  ['loadJump.weekRatio', 'loadJump.bigWeekRatio'],
  ['loadJump.tissueRatio', 'loadJump.actRatio'],
  ['loadJump.weekRatio', 'loadJump.actRatio'],
  ['loadJump.sessionsAtLeast', 'loadJump.sessionsBefore'],
  ['loadJump.setDaysAtLeast', 'loadJump.setDaysBefore'],
  ['stackedStress.each', 'stackedStress.mean'],
  ['stackedStress.daysAtLeast', 'stackedStress.daysBefore'],
  ['stackedStress.days', 'stackedStress.withinDays'],
  ['noLetUp.restDaysUnder18', 'noLetUp.restDays'],
  ['returnTooFast.fromDays', 'returnTooFast.mediumDays'],
  ['returnTooFast.mediumDays', 'returnTooFast.longDays'],
  ['returnTooFast.longDays', 'day.newStartDays'],
  ['returnTooFast.longShare', 'returnTooFast.mediumShare'],
  ['returnTooFast.mediumShare', 'returnTooFast.shortShare'],
  ['tooHard.days', 'tooHard.ofDays'],
  ['stalled.overDays', 'stalled.withinDays'],
  ['stalled.recentDays', 'stalled.withinDays'],
  ['stalled.recentTrainingDays', 'stalled.trainingDays'],
  ['slipping.beforeFromDays', 'slipping.beforeToDays'],
  ['slipping.dropPercent', 'slipping.balancePercent'],
];

/**
 * What is wrong with changed numbers, by id: not a number of these rules, kept the same for everybody, outside its
 * bounds, or at odds with another number in force. Empty: they can be used. `base`: what they are laid over.
 */
export function refusedNumbers(
  changed: Readonly<Record<string, unknown>>,
  base: Partial<Limits> = {},
): ReadonlyMap<string, string> {
  const refused = new Map<string, string>();
  const good: Partial<Record<LimitId, number>> = {};
  for (const [id, value] of Object.entries(changed)) {
    const why = isLimitId(id) ? whyRefused(id, value) : 'is not a number of these checks';
    if (why !== undefined) refused.set(id, why);
    else if (isLimitId(id) && typeof value === 'number') good[id] = value;
  }
  const limits = limitsWith({ ...base, ...good });
  for (const [smaller, larger] of NOT_OVER) {
    if (limits[smaller] <= limits[larger]) continue;
    const [at, words] = Object.hasOwn(good, smaller)
      ? [smaller, `must not be over ${limits[larger]}: “${THRESHOLDS[larger].meaning}”`]
      : [larger, `must not be under ${limits[smaller]}: “${THRESHOLDS[smaller].meaning}”`];
    if (!refused.has(at) && Object.hasOwn(good, at)) refused.set(at, words);
  }
  return refused;
}

function whyRefused(id: LimitId, value: unknown): string | undefined {
  const { min, max, whole, kept, stricter } = boundsOf(id);
  if (kept !== undefined) return `cannot be changed: ${kept}`;
  if (typeof value !== 'number' || !Number.isFinite(value)) return 'must be a number';
  if (whole && !Number.isInteger(value)) return 'must be a whole number';
  if (value < min || value > max)
    return `must be between ${min} and ${max}${stricter === undefined ? '' : `: ${stricter}`}`;
  return undefined;
}
