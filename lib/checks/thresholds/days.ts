import { PRACTICE, threshold } from './threshold.ts';

const EWMA = 'Williams S et al. Br J Sports Med 2017;51(3):209-210 (lambda = 2/(N+1))';
const FOSTER = 'Foster C. Med Sci Sports Exerc 1998;30(7):1164-1168';

/** Numbers that more than one check reads: days, weeks, pain, cold start. */
export const DAYS = {
  'day.restGapDays': threshold(
    4,
    'days',
    'between two check-ins at most this far apart, days are taken as rest',
  ),
  'day.restGapOwnMedian': threshold(1.5, 'x own median gap', 'or within this share of the own median gap'),
  'day.lookBackDays': threshold(
    196,
    'days',
    'checks look back this far, half a year and two weeks',
    PRACTICE,
  ),
  'day.lookBackStep': threshold(28, 'days', 'and on to the last of these steps since the client joined'),
  'day.newStartDays': threshold(
    84,
    'days',
    'off or without a word this long: whoever comes back starts as new',
    PRACTICE,
  ),
  'week.days': threshold(7, 'days', 'a rolling week', PRACTICE),
  'week.usualOf': threshold(8, 'weeks', 'ordinary weeks of which the usual week is the median'),
  'week.usualAmong': threshold(10, 'weeks', 'weeks back among which they are looked for'),
  'week.usualAtLeast': threshold(4, 'weeks', 'ordinary weeks needed, else not enough history'),
  'ewma.shortDays': threshold(7, 'days', 'short exponentially weighted mean', EWMA),
  'ewma.longDays': threshold(28, 'days', 'long exponentially weighted mean', EWMA),
  'ewma.afterDays': threshold(
    42,
    'days',
    'shown only after this; under 5 % of the seed is left then',
    'own computation: (1 - 2/29)^42 = 0.0497',
  ),
  'monotony.days': threshold(7, 'days', 'calendar days of monotony and strain, population SD', FOSTER),
  'coldStart.days': threshold(28, 'days', 'first weeks, in which most load checks wait', PRACTICE),
  'tissue.loaded': threshold(0.3, 'weight 0-1', 'a rung loads a tissue from this weight on', PRACTICE),
  'usualPain.fromDays': threshold(14, 'days ago', 'usual pain: newest check-in counted'),
  'usualPain.toDays': threshold(56, 'days ago', 'usual pain: oldest check-in counted'),
  'usualPain.atLeast': threshold(5, 'check-ins', 'fewer: the intake value, else 0'),
};
