import { dateOfDayNumber, dayNumber } from '#lib/domain/day-number.ts';
import type { AsOf } from '#lib/domain/finding.ts';
import type { ClientHistory, HistoryAbsence } from '#lib/domain/history.ts';
import { emptyMemo } from './once-per-view.ts';
import { plansThatHeld } from './plans-that-held.ts';
import { standingOn } from './standing-on.ts';
import { DEFAULT_LIMITS, type Limits } from './thresholds.ts';
import type { ClientView, Day } from './types.ts';
import { buildView, easyDays, firstSeen, indexFrom } from './view.ts';

/**
 * What `buildView` builds, told of the view of an evening before: what was worked out of check-ins then is not worked out
 * again where every day of that one is here with the same check-ins. It changes nothing that is said.
 */
export function nextView(
  history: ClientHistory,
  asOf: AsOf,
  limits: Limits = DEFAULT_LIMITS,
  earlier?: ClientView,
): ClientView {
  if (!earlier) return buildView(history, asOf, limits);
  earlier.earlier = undefined; // one step back is enough, and a chain would hold every night
  const view = viewOfQuietDays(history, asOf, limits, earlier) ?? buildView(history, asOf, limits);
  if (view.nothingNew || beginsAlike(view, earlier)) view.earlier = earlier;
  return view;
}

/** Some days more, of which nobody has told anything; undefined where that is not all that is new. */
function viewOfQuietDays(
  history: ClientHistory,
  asOf: AsOf,
  limits: Limits,
  earlier: ClientView,
): ClientView | undefined {
  const before = earlier.asOf.date;
  if (asOf.date <= before || limits !== earlier.limits || !isSameHistory(history, earlier.history)) return;
  if (history.checkIns.some(({ date }) => date > before)) return;
  const [from, last] = [dayNumber(before) + 1, dayNumber(asOf.date)];
  const length = earlier.days.length + last - from + 1;
  if (dayNumber(earlier.days[0]?.date ?? before) < firstSeen(earlier.joinedOn, last, limits)) return;
  const { rungs, planOn, joinedOn } = earlier;
  return {
    history,
    asOf,
    limits,
    days: earlier.days.concat(quietDays(history, from, last)),
    joinedOn,
    indexOf: indexFrom(last - length + 1, length),
    memo: emptyMemo(),
    nothingNew: true,
    rungs,
    planOn,
    standing: standingOn(history.placements, asOf.date, rungs),
  };
}

function isSameHistory(a: ClientHistory, b: ClientHistory): boolean {
  return (
    a.checkIns === b.checkIns &&
    a.absences === b.absences &&
    a.plans === b.plans &&
    a.placements === b.placements &&
    a.rungs === b.rungs &&
    a.client === b.client
  );
}

function quietDays({ absences, plans }: ClientHistory, from: number, last: number): Day[] {
  const easy = easyDays(plansThatHeld(plans).reverse(), from, last);
  return easy.map((isEasy, index) => {
    const date = dateOfDayNumber(from + index);
    const off = absences.some((absence) => covers(absence, date));
    return {
      date,
      state: off ? 'off' : 'unknown',
      checkIns: [],
      sessionLoad: off ? 0 : undefined,
      easy: isEasy,
      soft: false,
    };
  });
}

function covers({ from, to }: HistoryAbsence, date: string): boolean {
  return from <= date && (to === null || to >= date);
}

function beginsAlike(view: ClientView, earlier: ClientView): boolean {
  const { history, days } = earlier;
  const { rungs, plans, client } = view.history;
  if (history.rungs !== rungs || history.plans !== plans || history.client !== client) return false;
  if (days.length > view.days.length || days[0]?.date !== view.days[0]?.date) return false;
  return days.every(({ checkIns }, index) => {
    const now = view.days[index]?.checkIns ?? [];
    return now.length === checkIns.length && checkIns.every((checkIn, at) => checkIn === now[at]);
  });
}
