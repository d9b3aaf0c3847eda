import { dateOfDayNumber, dayNumber } from '#lib/domain/day-number.ts';
import type { Outcome, Subject } from '#lib/domain/finding.ts';
import { type Break, newestBreak } from '../breaks.ts';
import { exceeds } from '../compare.ts';
import { isResting } from '../contact-silence.ts';
import { findingOf } from '../finding-of.ts';
import { roundTo, whole } from '../in-numbers.ts';
import { loadsOf } from '../load-series.ts';
import { type Band, bandOf } from '../return-band.ts';
import { startAfterBreak } from '../start-after-break.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { totalUpTo, usualWeek } from '../usual-week.ts';
import { asPercent, counted, dayInWords } from '../words.ts';

const SUBJECT: Subject = { key: 'return', label: '' };
const PLANNED: Subject = { key: 'planned-return', label: '' };

/**
 * After 10 or more days off (or silent for longer than ever before): the first 7 days against a share of the usual
 * week before the break. Three days before a return that was said, a return plan as a draft. Shares: common practice.
 */
export const returnTooFast: Check = {
  kind: 'return-too-fast',
  title: 'Return too fast',
  question: 'Is the first week after a break bigger than a step back in?',
  evaluate: (view, limits) => {
    const returned = judgeReturn(view, limits);
    const planned = plannedReturn(view, limits);
    const started = startAfterBreak(view, limits);
    return [returned, ...(planned ? [planned] : []), ...(started ? [started] : [])];
  },
};

function judgeReturn(view: ClientView, limits: Limits): Outcome {
  const pause = newestBreak(view, {
    atLeast: limits['returnTooFast.fromDays'],
    endedWithin: limits['returnTooFast.shownDays'],
  });
  if (!pause) return { status: 'clear', kind: 'return-too-fast', subject: SUBJECT };
  const { session } = loadsOf(view);
  const length = limits['week.days'];
  const last = view.days.length - 1;
  const end = Math.min(last, pause.returned + length - 1);
  const week = totalUpTo(session, end, end - pause.returned + 1);
  const usual = usualWeek(view, session, limits, pause.from - 1);
  if (!usual.enough) {
    const missing = `${usual.weeks} of ${usual.needed} ordinary weeks before the break`;
    return { status: 'not-enough-history', kind: 'return-too-fast', subject: SUBJECT, missing };
  }
  const band = bandOf(pause.days, limits);
  if (!exceeds(week.total, limits[band.share] * usual.usual)) {
    return { status: 'clear', kind: 'return-too-fast', subject: SUBJECT, lowerBound: week.known < week.of };
  }
  return raised(view, { pause, band, total: week.total, usual: usual.usual, known: week }, limits);
}

type Found = {
  pause: Break;
  band: Band;
  total: number;
  usual: number;
  known: { known: number; of: number };
};

function raised(view: ClientView, { pause, band, total, usual, known }: Found, limits: Limits): Outcome {
  const since = view.days[pause.returned]?.date ?? view.asOf.date;
  const share = total / usual;
  const allowed = limits[band.share];
  return findingOf(
    {
      kind: 'return-too-fast',
      subject: SUBJECT,
      level: exceeds(total, usual) ? 'act' : 'watch',
      sentence: `Back after ${counted(pause.days, 'day')}: the first week is at **${asPercent(share)} of the usual week** before the break (${whole(total)} AU of ${whole(usual)}); a step back in would be ${asPercent(allowed)}.`,
      short: `return at ${asPercent(share)}`,
      since,
      step: { kind: 'cut-volume', text: band.step },
      clears: `Two weeks since the return on ${dayInWords(since)}.`,
      evidence: {
        breakDays: pause.days,
        daysOff: pause.off,
        weekAu: roundTo(total, 1),
        usualAu: roundTo(usual, 1),
        share: roundTo(share, 2),
        allowed,
        severity: Math.floor(share * 5) / 5,
      },
      inputs: [
        { name: 'days without training', value: pause.days, unit: 'days' },
        { name: 'load since the return, first 7 days', value: roundTo(total, 1), unit: 'AU' },
        { name: 'usual week before the break', value: roundTo(usual, 1), unit: 'AU' },
      ],
      formula: 'Session load of the first 7 days after the break over the usual week before it.',
      thresholds: ['returnTooFast.fromDays', band.share],
      daysKnown: { known: known.known, of: known.of },
      doubt:
        'The shares are rules of thumb of the trade; how much is lost in a break differs from one to another.',
    },
    limits,
  );
}

/** A break that was said and ends within three days: time to draft the plan of the return. */
function plannedReturn(view: ClientView, limits: Limits): Outcome | undefined {
  if (isResting(view)) return undefined;
  const tonight = dayNumber(view.asOf.date);
  const ending = saidBreaks(view).find(({ from, last }) => {
    const ahead = last - tonight;
    const long = last - from + 1 >= limits['returnTooFast.fromDays'];
    return long && ahead >= 0 && ahead < limits['returnTooFast.draftDays'];
  });
  if (!ending) return undefined;
  const days = ending.last - ending.from + 1;
  const to = dateOfDayNumber(ending.last);
  const band = bandOf(days, limits);
  return findingOf(
    {
      kind: 'return-too-fast',
      subject: PLANNED,
      level: 'watch',
      sentence: `Back after **${counted(days, 'day')} off**, last day off ${dayInWords(to)}: a first week of ${asPercent(limits[band.share])} of usual would be a step back in.`,
      short: 'return plan to write',
      since: dateOfDayNumber(Math.min(tonight, ending.from)),
      step: { kind: 'new-plan', text: 'Write the plan of the return' },
      clears: 'The return.',
      evidence: { daysOff: days, lastDayOff: to, allowed: limits[band.share] },
      inputs: [{ name: 'days off', value: days, unit: 'days' }],
      formula: 'Length of the break that was said, and the share that belongs to it.',
      thresholds: ['returnTooFast.fromDays', 'returnTooFast.draftDays', band.share],
      doubt: 'The shares are rules of thumb of the trade.',
    },
    limits,
  );
}

type SaidBreak = { from: number; last: number };

/**
 * Breaks that were said and have begun, in order; those that touch or overlap are one, and one without an end never
 * ends. One that begins later is not looked at: a night that is rerun says what it said.
 */
function saidBreaks(view: ClientView): SaidBreak[] {
  const said = view.history.absences
    .filter(({ from }) => from <= view.asOf.date)
    .map(({ from, to }) => ({
      from: dayNumber(from),
      last: to === null ? Number.POSITIVE_INFINITY : dayNumber(to),
    }))
    .sort((a, b) => a.from - b.from);
  const breaks: SaidBreak[] = [];
  for (const one of said) {
    const before = breaks.at(-1);
    if (before && one.from <= before.last + 1) before.last = Math.max(before.last, one.last);
    else breaks.push(one);
  }
  return breaks;
}
