import type { Outcome, Subject } from '#lib/domain/finding.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { reaches } from '../compare.ts';
import { daysAgo, isResting } from '../contact-silence.ts';
import { findingOf } from '../finding-of.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { counted, dayInWords } from '../words.ts';

const SUBJECT: Subject = { key: 'asked', label: '' };

/** Films the coach asked for that have not come, days off left out. Common practice. */
export const askedNoAnswer: Check = {
  kind: 'asked-no-answer',
  title: 'Asked, no answer',
  question: 'Has the client not sent what the coach asked for?',
  evaluate: (view, limits) => [judge(view, limits)],
};

function judge(view: ClientView, limits: Limits): Outcome {
  const { films = [], client } = view.history;
  const { instant } = view.asOf;
  const [longest, ...others] = films
    .filter((film) => film.askedAt <= instant && (film.receivedAt === null || film.receivedAt > instant))
    .map((film) => {
      const date = localDateOf(new Date(film.askedAt), client.zone);
      const off = view.days.filter((day) => day.state === 'off' && day.date > date).length;
      return { ...film, date, days: daysAgo(view, date) - off };
    })
    .sort((a, b) => b.days - a.days || (a.id < b.id ? -1 : 1));
  if (!longest || isResting(view) || !reaches(longest.days, limits['askedNoAnswer.days'])) {
    return { status: 'clear', kind: 'asked-no-answer', subject: SUBJECT };
  }
  const words = longest.words === '' ? '' : ` (${longest.words})`;
  const more = others.length > 0 ? `, and ${counted(others.length, 'more')}` : '';
  return findingOf(
    {
      kind: 'asked-no-answer',
      subject: SUBJECT,
      level: 'watch',
      sentence: `A film was asked for **${counted(longest.days, 'day')} ago**, on ${dayInWords(longest.date)}${words}, and has not come${more}.`,
      short: `film asked ${counted(longest.days, 'day')} ago`,
      since: longest.date,
      step: { kind: 'write-first', text: 'Ask again, or take the request back' },
      clears: 'The film, or the request taken back.',
      evidence: { film: longest.id, days: longest.days, open: others.length + 1 },
      inputs: [{ name: 'days since it was asked for, days off left out', value: longest.days, unit: 'days' }],
      formula: 'Days since the oldest open request.',
      thresholds: ['askedNoAnswer.days'],
      doubt: 'What was sent another way is not known here.',
    },
    limits,
  );
}
