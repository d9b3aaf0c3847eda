import { PRACTICE, threshold } from './threshold.ts';

/** From reasons to urgency, and the life of a reason. */
export const REASONS = {
  'points.watch': threshold(1, 'points', 'a reason at watch'),
  'points.act': threshold(2, 'points', 'a reason at act'),
  'points.danger': threshold(
    3,
    'points',
    'danger sign, pain 6 and more',
    'form after Royal College of Physicians 2017 (sum plus a single red); numbers own',
  ),
  'reason.clearNights': threshold(2, 'nights', 'clear nights that close a reason'),
  'reason.reopenDays': threshold(14, 'days', 'closed for at most this: reopens, no new mark'),
  'reason.earlyNights': threshold(
    3,
    'nights',
    'first nights of a check for a client: client page only',
    PRACTICE,
  ),
};
