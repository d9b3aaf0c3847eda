import type { Fact, Outcome, Subject } from '#lib/domain/finding.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import type { Level } from '#lib/domain/vocabulary.ts';
import { reaches } from '../compare.ts';
import { daysAgo, isResting, silenceOf } from '../contact-silence.ts';
import { findingOf } from '../finding-of.ts';
import { daysHere } from '../new-start.ts';
import type { LimitId, Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { counted, dayInWords, plainNumber } from '../words.ts';

const SUBJECT: Subject = { key: 'contact', label: '' };
const CLEAR: Outcome = { status: 'clear', kind: 'gone-quiet', subject: SUBJECT };

/**
 * Silence against the client's own longest gap of 12 weeks, days off left out; before the first check-in against the
 * invitation or the first planned day. Own rule, numbers tried on simulated clients; the first month is common practice.
 */
export const goneQuiet: Check = {
  kind: 'gone-quiet',
  title: 'Gone quiet',
  question: 'Has nothing come from this client for longer than is usual for them?',
  evaluate: (view, limits) => {
    if (isResting(view)) return [CLEAR];
    const silence = silenceOf(view, limits['goneQuiet.gapDays']);
    if (silence) return [silent(view, silence, limits)];
    return [view.history.client.joinedAt === null ? neverCame(view, limits) : neverStarted(view, limits)];
  },
};

function silent(
  view: ClientView,
  { lastDate, days, longestGap }: { lastDate: string; days: number; longestGap: number },
  limits: Limits,
): Outcome {
  const firstMonth = daysHere(view) <= limits['goneQuiet.monthDays'];
  const floor = limits[firstMonth ? 'goneQuiet.firstMonthDays' : 'goneQuiet.watchDays'];
  const watch = Math.max(floor, limits['goneQuiet.watchGap'] * longestGap);
  const act = Math.max(limits['goneQuiet.actDays'], limits['goneQuiet.actGap'] * longestGap);
  if (!reaches(days, watch)) return CLEAR;
  const ids: LimitId[] = [
    firstMonth ? 'goneQuiet.firstMonthDays' : 'goneQuiet.watchDays',
    'goneQuiet.watchGap',
    'goneQuiet.actDays',
    'goneQuiet.actGap',
  ];
  const gap = longestGap > 0 ? `; the longest gap in 12 weeks was ${counted(longestGap, 'day')}` : '';
  return raised(
    {
      level: reaches(days, act) ? 'act' : 'watch',
      since: lastDate,
      days,
      sentence: `Nothing for **${counted(days, 'day')}**, since ${dayInWords(lastDate)}${gap}.`,
      inputs: [
        { name: 'days since the last check-in, days off left out', value: days, unit: 'days' },
        { name: 'own longest gap in 12 weeks', value: longestGap, unit: 'days' },
        { name: 'watch from', value: plainNumber(watch), unit: 'days' },
        { name: 'act from', value: plainNumber(act), unit: 'days' },
      ],
      ids,
    },
    limits,
  );
}

function neverCame(view: ClientView, limits: Limits): Outcome {
  const { invitedAt, zone, standing } = view.history.client;
  if (invitedAt === null || standing !== 'invited') return CLEAR;
  return sinceDate(view, limits, {
    date: localDateOf(new Date(invitedAt), zone),
    after: 'goneQuiet.neverCameDays',
    words: 'Never came in: invited',
  });
}

function neverStarted(view: ClientView, limits: Limits): Outcome {
  const joined = view.days[0]?.date ?? view.asOf.date;
  const starts = view.history.plans.map((plan) => plan.from).sort()[0];
  if (starts === undefined) return CLEAR;
  return sinceDate(view, limits, {
    date: [starts, joined].sort()[1] ?? joined,
    after: 'goneQuiet.neverStartedDays',
    words: 'Never started: first planned day',
  });
}

function sinceDate(
  view: ClientView,
  limits: Limits,
  { date, after, words }: { date: string; after: LimitId; words: string },
): Outcome {
  const days = daysAgo(view, date) - offSince(view, date);
  if (!reaches(days, limits[after])) return CLEAR;
  return raised(
    {
      level: reaches(days, limits['goneQuiet.actDays']) ? 'act' : 'watch',
      since: date,
      days,
      sentence: `${words} **${counted(days, 'day')} ago**, on ${dayInWords(date)}, and no check-in yet.`,
      inputs: [{ name: 'days since, days off left out', value: days, unit: 'days' }],
      ids: [after, 'goneQuiet.actDays'],
    },
    limits,
  );
}

function offSince(view: ClientView, date: string): number {
  return view.days.filter((day) => day.state === 'off' && day.date > date).length;
}

type Found = {
  level: Level;
  since: string;
  days: number;
  sentence: string;
  inputs: Fact[];
  ids: LimitId[];
};

function raised({ level, since, days, sentence, inputs, ids }: Found, limits: Limits): Outcome {
  return findingOf(
    {
      kind: 'gone-quiet',
      subject: SUBJECT,
      level,
      sentence,
      short: `quiet ${counted(days, 'day')}`,
      since,
      step: { kind: 'write-first', text: 'Write first: ask how things are, before asking for training' },
      clears: 'A check-in, or days off said by the client or the coach.',
      evidence: { days, since },
      inputs,
      formula:
        'Days without a check-in against the larger of a fixed number and a multiple of the own longest gap.',
      thresholds: ids,
      doubt: 'Training that was not written down looks the same as no training.',
    },
    limits,
  );
}
