import type { Outcome, Subject } from '#lib/domain/finding.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { reaches } from '../compare.ts';
import { daysAgo, isResting } from '../contact-silence.ts';
import { findingOf } from '../finding-of.ts';
import { newStartAt } from '../new-start.ts';
import type { LimitId, Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { counted } from '../words.ts';

const SUBJECT: Subject = { key: 'seen', label: '' };

/** Days since a coach last looked at the client, or since the client joined. Common practice. */
export const notSeen: Check = {
  kind: 'not-seen',
  title: 'Not seen',
  question: 'Has nobody looked at this client for two weeks (one in the first month)?',
  evaluate: (view, limits) => [judge(view, limits)],
};

function judge(view: ClientView, limits: Limits): Outcome {
  const { seen, client } = view.history;
  const clear: Outcome = { status: 'clear', kind: 'not-seen', subject: SUBJECT };
  if (isResting(view) || view.joinedOn === undefined) return clear;
  let looked: string | undefined;
  for (const at of seen) if (at <= view.asOf.instant && at > (looked ?? '')) looked = at;
  const since = looked ? localDateOf(new Date(looked), client.zone) : view.joinedOn;
  // By the day of that look: the end of the month is no look, and ends no wait.
  const id: LimitId =
    view.indexOf(since) - newStartAt(view) < limits['goneQuiet.monthDays']
      ? 'notSeen.firstMonthDays'
      : 'notSeen.days';
  const days = daysAgo(view, since);
  if (!reaches(days, limits[id])) return clear;
  const sentence = looked
    ? `Nobody has looked for **${counted(days, 'day')}**.`
    : `Nobody has looked yet, **${counted(days, 'day')}** after joining.`;
  return findingOf(
    {
      kind: 'not-seen',
      subject: SUBJECT,
      level: 'watch',
      sentence,
      short: `not seen ${counted(days, 'day')}`,
      since,
      step: { kind: 'look', text: 'Look at the last check-ins and say one thing' },
      clears: 'A coach looks.',
      evidence: { days, since },
      inputs: [{ name: 'days since a coach looked', value: days, unit: 'days' }],
      formula: 'Days from the newest seen mark, or from joining, to tonight.',
      thresholds: [id],
      doubt: 'A look without marking it seen is not counted.',
    },
    limits,
  );
}
