import type { ClientHistory } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { reaches } from '../compare.ts';
import { roundTo } from '../in-numbers.ts';
import type { Limits } from '../thresholds.ts';
import { buildView } from '../view.ts';
import { otherChanges } from './other-changes.ts';
import type { Amount, Followed, Measured, Since, SinceOutcome } from './types.ts';
import { measureOf } from './windows.ts';

/**
 * Whether what a reason was about is better, the same or worse since the day it is followed from, at the end of a window
 * of `windowDays` days. The day itself still counts as before: what is written that evening has hardly been changed by
 * what was decided in it. Nothing dated after the window is read, so every night that asks gets one answer.
 * `not-yet`: the window is not over on the evening of `today`. `not-known`: too few known days, with the count.
 * Undefined: a reason of this kind is not followed. It says "better since", never what made it so.
 */
export function betterSince(
  history: ClientHistory,
  followed: Followed,
  windowDays: number,
  today: string,
  limits: Limits,
): Since | undefined {
  const measure = measureOf(followed.kind);
  if (!measure) return undefined;
  const until = addDays(followed.from, windowDays);
  const none = { windowDays, until, what: '', unit: '', before: null, after: null, said: '' };
  if (today < until) return { ...none, outcome: 'not-yet', changes: [] };
  const measured = measure({
    before: viewOn(history, followed.from, limits),
    after: viewOn(history, until, limits),
    followed,
    windowDays,
    limits,
  });
  return {
    ...none,
    outcome: outcomeOf(measured),
    what: measured.what,
    unit: measured.unit,
    before: amountOf(measured.before),
    after: amountOf(measured.after),
    said: inWords(measured),
    changes: otherChanges(history, followed, until, limits),
  };
}

function viewOn(history: ClientHistory, date: string, limits: Limits) {
  return buildView(history, { date, instant: `${date}T23:59:59.999Z` }, limits);
}

/**
 * A difference under the tolerance is the same. A number that is only a lower bound may prove what more of it would
 * prove as well, and nothing else.
 */
function outcomeOf({ before, after, tolerance, lowerIsBetter, passed }: Measured): SinceOutcome {
  if (passed !== undefined) return 'better';
  if ('missing' in before || 'missing' in after) return 'not-known';
  const risen = reaches(after.value - before.value, tolerance);
  const fallen = reaches(before.value - after.value, tolerance);
  if (after.atLeast && before.atLeast) return 'not-known';
  if (after.atLeast && !risen) return 'not-known';
  if (before.atLeast && !fallen) return 'not-known';
  if (!risen && !fallen) return 'same';
  return risen === lowerIsBetter ? 'worse' : 'better';
}

function inWords({ what, before, after, passed }: Measured): string {
  if (passed !== undefined) return passed;
  const of = (amount: Amount) => ('missing' in amount ? `not known, ${amount.missing}` : amount.said);
  return `${what}: before ${of(before)}; at the end ${of(after)}`;
}

function amountOf(amount: Amount): number | null {
  const DECIMALS = 4;
  return 'missing' in amount ? null : roundTo(amount.value, DECIMALS);
}
