import { PRACTICE, threshold } from './threshold.ts';

const MODEL =
  'rule own, after Thomee R. Phys Ther 1997;77(12):1690-1703 and Silbernagel KG et al. Am J Sports Med 2007;35(6):897-906 (Achilles and knee)';
const CUSUM = 'Page ES. Biometrika 1954;41(1-2):100-115 (the method); the numbers are our own choice';

/** danger-sign, pain-high, pain-rising, pain-lingering, pain-after-ground and the grade of a day. */
export const PAIN = {
  'grade.stop': threshold(6, 'pain 0-10', 'any value from here: stop', MODEL),
  'grade.reduceMorning': threshold(2, 'points', 'morning above usual: reduce', MODEL),
  'grade.reduceTwoMornings': threshold(1, 'points', 'on two mornings running: reduce', MODEL),
  'grade.careful': threshold(3, 'pain 0-10', 'worst from here: careful', MODEL),
  'grade.under18Stricter': threshold(1, 'steps', 'under 18 stricter by this; clinician to confirm'),
  'painHigh.from': threshold(6, 'pain 0-10', 'high from here', MODEL),
  'painHigh.clearAt': threshold(4, 'pain 0-10', 'cleared by check-ins of this or less'),
  'painHigh.clearCheckIns': threshold(2, 'check-ins', 'how many'),
  'dangerSign.twiceDays': threshold(14, 'days', 'tingling twice within this: now'),
  'painRising.days': threshold(21, 'days', 'check-ins of the last'),
  'painRising.allowance': threshold(1, 'points', 'taken from what is above usual each time', CUSUM),
  'painRising.watch': threshold(5, 'points added up', 'watch from here', CUSUM),
  'painRising.act': threshold(8, 'points added up', 'act from here', CUSUM),
  'painRising.morningAllowance': threshold(0.5, 'points', 'the same over known mornings', CUSUM),
  'painRising.morningWatch': threshold(3, 'points added up', 'watch from here, mornings', CUSUM),
  'painRising.recentAbove': threshold(2, 'points', 'one of the last check-ins this far above usual'),
  'painRising.recentCheckIns': threshold(2, 'check-ins', 'how many last check-ins'),
  'painRising.atLeast': threshold(4, 'check-ins', 'needed; before that by the intake value', PRACTICE),
  'painRising.coldAbove': threshold(3, 'points', 'over the intake value while there are fewer', PRACTICE),
  'painLingering.checkIns': threshold(5, 'check-ins', 'at least'),
  'painLingering.days': threshold(21, 'days', 'in the last'),
  'painLingering.from': threshold(3, 'pain 0-10', 'worst from here'),
  'painLingering.share': threshold(0.5, 'share', 'on more than this part of them'),
  'painLingering.intakeWeeks': threshold(3, 'weeks', 'sore that long at intake: from day 1', PRACTICE),
  'painAfterGround.days': threshold(7, 'days', 'after soft ground'),
  'painAfterGround.above': threshold(2, 'points', 'wrist above usual'),
  'painAfterGround.atLeast': threshold(3, 'pain 0-10', 'and at least'),
  'soreMuscle.from': threshold(7, 'soreness 0-10', 'a note from here'),
  'soreMuscle.days': threshold(3, 'days', 'for this many days'),
  'painCauses.days': threshold(14, 'days', 'days before, of which the load on the tissue is named'),
};
