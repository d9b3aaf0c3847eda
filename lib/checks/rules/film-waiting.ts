import type { Outcome, Subject } from '#lib/domain/finding.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { hoursWaited } from '../answering-hours.ts';
import { reaches } from '../compare.ts';
import { isResting } from '../contact-silence.ts';
import { findingOf } from '../finding-of.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { counted } from '../words.ts';

const SUBJECT: Subject = { key: 'films', label: '' };

/** Films that came and that nobody has looked at, by hours of the team's answering hours. Common practice. */
export const filmWaiting: Check = {
  kind: 'film-waiting',
  title: 'Film waiting',
  question: 'Has a film of this client waited for longer than a day of answering hours?',
  evaluate: (view, limits) => [judge(view, limits)],
};

function judge(view: ClientView, limits: Limits): Outcome {
  const { answering, films = [] } = view.history;
  const { instant } = view.asOf;
  const enough = limits['filmWaiting.actHours'] * 2;
  const [longest, ...others] = films
    .flatMap(({ id, receivedAt, lookedAt }) => (receivedAt ? [{ id, receivedAt, lookedAt }] : []))
    .filter((film) => film.receivedAt <= instant && (film.lookedAt === null || film.lookedAt > instant))
    .map((film) => ({ ...film, hours: hoursWaited(film.receivedAt, instant, answering, enough) }))
    .sort((a, b) => b.hours - a.hours || (a.id < b.id ? -1 : 1));
  if (!longest || isResting(view) || !reaches(longest.hours, limits['filmWaiting.watchHours'])) {
    return { status: 'clear', kind: 'film-waiting', subject: SUBJECT };
  }
  const hours = Math.floor(longest.hours + 1e-9);
  const more = others.length > 0 ? `, and ${counted(others.length, 'more film')}` : '';
  return findingOf(
    {
      kind: 'film-waiting',
      subject: SUBJECT,
      level: reaches(longest.hours, limits['filmWaiting.actHours']) ? 'act' : 'watch',
      sentence: `A film has waited **${hours} h** of answering hours to be looked at${more}.`,
      short: `film ${hours} h`,
      since: localDateOf(new Date(longest.receivedAt), view.history.client.zone),
      step: { kind: 'look', text: 'Look at the film and answer' },
      clears: 'The film looked at.',
      evidence: { film: longest.id, hours, open: others.length + 1 },
      inputs: [
        { name: 'hours waited', value: hours, unit: 'h' },
        { name: 'films not looked at', value: others.length + 1, unit: '' },
      ],
      formula: 'Hours from its arrival to this night that fall into the team’s answering hours.',
      thresholds: ['filmWaiting.watchHours', 'filmWaiting.actHours'],
      doubt: 'It does not know a film that came another way, or one that was looked at without being marked.',
    },
    limits,
  );
}
