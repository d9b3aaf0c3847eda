import type { Outcome, Subject } from '#lib/domain/finding.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { reaches } from '../compare.ts';
import { daysAgo, isResting } from '../contact-silence.ts';
import { findingOf } from '../finding-of.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { counted, dayInWords } from '../words.ts';

const SUBJECT: Subject = { key: 'asked', label: '' };

/** Films and start tests the coach asked for that have not come, days off left out. Common practice. */
export const askedNoAnswer: Check = {
  kind: 'asked-no-answer',
  title: 'Asked, no answer',
  question: 'Has the client not sent what the coach asked for?',
  evaluate: (view, limits) => [judge(view, limits)],
};

type Asked = { id: string; what: 'film' | 'tests'; since: string; words: string };
type Waited = Asked & { date: string; days: number };

/** Open requests. Of tests that are half answered time runs from the newest answer. */
function openRequests({ history, asOf: { instant } }: ClientView): Asked[] {
  const films = (history.films ?? [])
    .filter((film) => film.receivedAt === null || film.receivedAt > instant)
    .map(({ id, askedAt, words }): Asked => ({ id, what: 'film', since: askedAt, words }));
  const tests = (history.startTests ?? [])
    .filter(({ doneAt }) => doneAt === null || doneAt > instant)
    .map(
      ({ id, askedAt, movedAt }): Asked => ({
        id,
        what: 'tests',
        since: movedAt !== null && movedAt <= instant ? movedAt : askedAt,
        words: '',
      }),
    );
  return [...films, ...tests].filter(({ since }) => since <= instant);
}

function judge(view: ClientView, limits: Limits): Outcome {
  const [longest, ...others] = openRequests(view)
    .map((asked): Waited => {
      const date = localDateOf(new Date(asked.since), view.history.client.zone);
      const off = view.days.filter((day) => day.state === 'off' && day.date > date).length;
      return { ...asked, date, days: daysAgo(view, date) - off };
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
      sentence: `${sentenceOf(longest)}${words}, and ${longest.what === 'film' ? 'has not come' : 'are not finished'}${more}.`,
      short: `${longest.what === 'film' ? 'film' : 'start tests'} asked ${counted(longest.days, 'day')} ago`,
      since: longest.date,
      step: { kind: 'write-first', text: 'Ask again, or take the request back' },
      clears: 'What was asked for, or the request taken back.',
      evidence: { [longest.what]: longest.id, days: longest.days, open: others.length + 1 },
      inputs: [{ name: 'days since it was asked for, days off left out', value: longest.days, unit: 'days' }],
      formula: 'Days since the oldest open request; of half-answered tests since the newest answer.',
      thresholds: ['askedNoAnswer.days'],
      doubt: 'What was sent another way is not known here.',
    },
    limits,
  );
}

function sentenceOf({ what, days, date }: Waited): string {
  const ago = `**${counted(days, 'day')} ago**, on ${dayInWords(date)}`;
  return what === 'film'
    ? `A film was asked for ${ago}`
    : `Start tests were asked for, or last moved, ${ago}`;
}
