import { PRACTICE, threshold } from './threshold.ts';

const CHOSEN = 'own choice';

/** Better since: over how many days a step is followed, and how large a change has to be to count as one. */
export const BETTER_SINCE = {
  'betterSince.painFirst': threshold(7, 'days', 'pain: first look after a step', PRACTICE),
  'betterSince.painSecond': threshold(14, 'days', 'pain: second look', PRACTICE),
  'betterSince.painThird': threshold(28, 'days', 'pain: third look', PRACTICE),
  'betterSince.loadDays': threshold(14, 'days', 'too much: look after a step', PRACTICE),
  'betterSince.tooHardDays': threshold(14, 'days', 'too hard: look after a step', PRACTICE),
  'betterSince.quietDays': threshold(14, 'days', 'gone quiet, fading: look after a step', PRACTICE),
  'betterSince.progressFirst': threshold(28, 'days', 'stalled, slipping: first look', PRACTICE),
  'betterSince.progressSecond': threshold(42, 'days', 'stalled, slipping: second look', PRACTICE),
  'betterSince.sidesFirst': threshold(42, 'days', 'one side: first look', PRACTICE),
  'betterSince.sidesSecond': threshold(56, 'days', 'one side: second look', PRACTICE),
  'betterSince.changesBeforeDays': threshold(
    7,
    'days',
    'another change this long before the step, or after it, is said beside the answer',
    CHOSEN,
  ),
  'betterSince.painPoints': threshold(1, 'points', 'median pain differs by at least, else the same', CHOSEN),
  'betterSince.painCheckIns': threshold(
    2,
    'check-ins',
    'that speak of the place, in the 7 days before and in the last 7 days',
    CHOSEN,
  ),
  'betterSince.signShare': threshold(
    0.2,
    'share of check-ins',
    'share with the danger sign differs by at least',
    CHOSEN,
  ),
  'betterSince.loadRatio': threshold(
    0.15,
    'x usual week',
    '7-day total over the usual week differs by at least',
    CHOSEN,
  ),
  'betterSince.restDays': threshold(1, 'days', 'rest days in 14 differ by at least', CHOSEN),
  'betterSince.hardShare': threshold(0.15, 'share', 'share of broken sets differs by at least', CHOSEN),
  'betterSince.hardTrainingDays': threshold(2, 'days', 'training days with planned sets needed', CHOSEN),
  'betterSince.checkInDays': threshold(2, 'days of 14', 'days with a check-in differ by at least', CHOSEN),
  'betterSince.passShare': threshold(0.05, 'x pass mark', 'median score differs by at least', CHOSEN),
  'betterSince.scores': threshold(3, 'days', 'last scores whose median counts; all are needed', CHOSEN),
  'betterSince.scoreDays': threshold(21, 'days', 'scores of the last', CHOSEN),
  'betterSince.practiceShare': threshold(
    0.15,
    'share',
    'share of logged sessions with the drill differs by at least',
    CHOSEN,
  ),
  'betterSince.gapPoints': threshold(5, 'points of %', 'gap between the sides differs by at least', CHOSEN),
  'betterSince.pairs': threshold(4, 'pairs', 'pairs that say something, before and after', CHOSEN),
  'betterSince.faultPoints': threshold(
    10,
    'points of %',
    'share of sets with the fault, one side less the other, differs by at least',
    CHOSEN,
  ),
  'betterSince.windowPoints': threshold(
    5,
    'points of %',
    'distance of heel and toe pulls differs by at least',
    CHOSEN,
  ),
};
