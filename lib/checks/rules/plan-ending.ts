import type { Outcome, Subject } from '#lib/domain/finding.ts';
import { daysAgo, isResting } from '../contact-silence.ts';
import { findingOf } from '../finding-of.ts';
import { plansThatHeld } from '../plans-that-held.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { counted, dayInWords } from '../words.ts';

const SUBJECT: Subject = { key: 'plan', label: '' };
const CLEAR: Outcome = { status: 'clear', kind: 'plan-ending', subject: SUBJECT };

/** Days until the last planned day of the newest plan; a plan without an end never ends. Common practice. */
export const planEnding: Check = {
  kind: 'plan-ending',
  title: 'Plan ending',
  question: 'Does this client run out of planned days within a week?',
  evaluate: (view, limits) => [isResting(view) ? CLEAR : judge(view, limits)],
};

function judge(view: ClientView, limits: Limits): Outcome {
  const until = lastPlannedDay(view);
  if (until === null) return CLEAR;
  const left = -daysAgo(view, until);
  if (left > limits['planEnding.days']) return CLEAR;
  const over = left <= 0;
  const day = dayInWords(until);
  return findingOf(
    {
      kind: 'plan-ending',
      subject: SUBJECT,
      level: over ? 'act' : 'watch',
      sentence: over
        ? `**Nothing is planned** any more: the last planned day was ${day}.`
        : `The plan ends in **${counted(left, 'day')}**, on ${day}.`,
      short: over ? 'plan ended' : `plan ends ${day}`,
      since: until,
      step: { kind: 'new-plan', text: 'Write the next plan' },
      clears: 'A plan that goes on beyond a week.',
      evidence: { lastPlannedDay: until, daysLeft: Math.max(0, left) },
      inputs: [{ name: 'planned days left', value: Math.max(0, left), unit: 'days' }],
      formula: 'Days from tonight to the last planned day of the newest plan.',
      thresholds: ['planEnding.days'],
      doubt: 'It reads the plan as it is written; some clients go on with the old one, and that may be fine.',
    },
    limits,
  );
}

/** Of the plan that will hold last, also one that starts later; null when it is open or there is none. */
function lastPlannedDay(view: ClientView): string | null {
  return plansThatHeld(view.history.plans).at(-1)?.until ?? null;
}
