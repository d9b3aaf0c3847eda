import type { CheckKind } from '#lib/domain/vocabulary.ts';

/** What each check counts where it does not count days, and what an unknown day does to it. */
const COUNTS: Record<CheckKind, string> = {
  'danger-sign': 'It counts check-ins. A day without one says nothing and clears nothing.',
  'pain-high': 'It counts check-ins. A day without one says nothing and clears nothing.',
  'pain-rising':
    'It counts check-ins that speak of the place. Unknown days and mornings add nothing and take nothing away.',
  'pain-lingering': 'It counts check-ins that speak of the place. Unknown days count for neither side.',
  'pain-after-ground': 'It counts check-ins that speak of the wrist. Unknown days count for neither side.',
  'load-jump': 'Unknown days make the total a lower bound.',
  'new-hardest': 'It counts sets that were written down: on unknown days there may have been more.',
  'stacked-stress': 'It counts training days of each drill. Unknown days are left out.',
  'no-let-up': 'It counts known days only; an unknown day ends the count.',
  'return-too-fast':
    'It counts days off that were said, and days silent for longer than the own longest gap.',
  'too-many-goals': 'It reads the plan, not days.',
  'too-hard': 'It counts training days of this rung with planned sets. Other days change nothing.',
  'plan-outgrown': 'It counts training days of this rung. Other days change nothing.',
  stalled: 'It counts training days of this rung.',
  slipping: 'It counts training days of this rung. Other days change nothing.',
  'too-little-time':
    'It counts sessions that were logged, not the calendar: a forgotten log is not a skipped drill.',
  'window-gap': 'It counts days with a clean hold of each kind. Other days change nothing.',
  'side-gap': 'It counts days on which both sides were trained. Other days change nothing.',
  'one-side-fault': 'It counts sets of both sides. Other days change nothing.',
  'gone-quiet':
    'It counts days without a check-in: here an unknown day is what is asked about. Days off are left out.',
  fading: 'It counts training days that were written down; days off are left out.',
  'question-waiting': 'It counts hours.',
  'film-waiting': 'It counts hours.',
  'plan-ending': 'It reads the plan, not days.',
  'not-seen': 'It counts days since a coach looked.',
  'asked-no-answer': 'It counts days since it was asked for; days off are left out.',
  'limit-ending': 'It reads the limit, not days.',
  'step-up-earned': 'It counts training days of this rung. Unknown mornings do not block and are shown.',
};

/** "28 of 28 days are known.", with what the check counts. */
export function daysInWords(kind: CheckKind, known: { known: number; of: number } | null): string {
  return known ? `${known.known} of ${known.of} days are known. ${COUNTS[kind]}` : COUNTS[kind];
}
