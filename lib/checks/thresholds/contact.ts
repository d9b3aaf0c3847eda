import { PRACTICE, threshold } from './threshold.ts';

/** gone-quiet, fading and what is owed. */
export const CONTACT = {
  'goneQuiet.watchDays': threshold(7, 'days', 'silent at least, watch'),
  'goneQuiet.watchGap': threshold(1.35, 'x own longest gap', 'and for this, watch'),
  'goneQuiet.actDays': threshold(10, 'days', 'silent at least, act'),
  'goneQuiet.actGap': threshold(1.5, 'x own longest gap', 'and for this, act'),
  'goneQuiet.gapDays': threshold(84, 'days', 'days back in which the own longest gap is looked for'),
  'goneQuiet.neverCameDays': threshold(3, 'days', 'after the invitation', PRACTICE),
  'goneQuiet.neverStartedDays': threshold(4, 'days', 'after the first planned day', PRACTICE),
  'goneQuiet.firstMonthDays': threshold(5, 'days', 'silent in the first month', PRACTICE),
  'goneQuiet.monthDays': threshold(28, 'days', 'length of the first month', PRACTICE),
  'fading.days': threshold(28, 'days', 'training days logged in'),
  'fading.beforeDays': threshold(56, 'days', 'against the mean of the days before'),
  'fading.share': threshold(0.45, 'x mean before', 'under'),
  'fading.fewer': threshold(4, 'days', 'and at least this many fewer'),
  'questionWaiting.watchHours': threshold(24, 'h in answering hours', 'watch from', PRACTICE),
  'questionWaiting.actHours': threshold(48, 'h in answering hours', 'act from', PRACTICE),
  'filmWaiting.watchHours': threshold(24, 'h in answering hours', 'watch from', PRACTICE),
  'filmWaiting.actHours': threshold(48, 'h in answering hours', 'act from', PRACTICE),
  'planEnding.days': threshold(7, 'days', 'last planned day within', PRACTICE),
  'notSeen.days': threshold(14, 'days', 'nobody has looked for', PRACTICE),
  'notSeen.firstMonthDays': threshold(7, 'days', 'the same in the first month', PRACTICE),
  'askedNoAnswer.days': threshold(5, 'days', 'film, answer or test asked for and not come', PRACTICE),
  'limitEnding.days': threshold(3, 'days', 'before a limit ends', PRACTICE),
};
