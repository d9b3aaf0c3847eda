import { PRACTICE, threshold } from './threshold.ts';

const BANDS =
  'Parkinson AO et al. J Sports Sci Med 2021;20:594-617 (10-15 % mostly used, often without support)';

/** side-gap, one-side-fault. */
export const SIDES_APART = {
  'sideGap.pairs': threshold(6, 'pairs', 'untied pairs needed; with fewer a sign test can not reach 0.05'),
  'sideGap.days': threshold(56, 'days', 'in the last'),
  'sideGap.p': threshold(0.05, 'probability', 'exact sign test, one-sided, under'),
  'sideGap.lastPairs': threshold(6, 'pairs', 'pairs whose median gap counts'),
  'sideGap.watchPercent': threshold(10, '%', 'median gap: watch', BANDS),
  'sideGap.actPercent': threshold(15, '%', 'median gap: act', BANDS),
  'sideGap.worsePoints': threshold(10, 'points of %', 'worse than when a step was taken: speaks again'),
  'sideGap.openEndedWeeks': threshold(2, 'weeks', 'one open-ended set every', PRACTICE),
  'oneSideFault.days': threshold(42, 'days', 'sets of the last'),
  'oneSideFault.p': threshold(0.01, 'probability', "Fisher's exact test, one-sided, under"),
  'oneSideFault.sets': threshold(8, 'sets', 'a side at least'),
};
