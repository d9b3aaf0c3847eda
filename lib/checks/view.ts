import { dateOfDayNumber, dayNumber } from '#lib/domain/day-number.ts';
import type { AsOf } from '#lib/domain/finding.ts';
import type { ClientHistory, HistoryCheckIn, HistoryPlan } from '#lib/domain/history.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { median } from '#lib/stats/median.ts';
import { sessionLoadOf } from './day-facts.ts';
import { emptyMemo } from './once-per-view.ts';
import { plansThatHeld } from './plans-that-held.ts';
import { isOnSoftGround } from './soft-ground.ts';
import { standingOn } from './standing-on.ts';
import { DEFAULT_LIMITS, type Limits } from './thresholds.ts';
import type { ClientView, Day, DayState } from './types.ts';

/**
 * One client seen from the evening of `asOf.date`: every local date with its state, load and check-ins, oldest first.
 * Nothing dated later is looked at. Unknown days stay unknown: no zero is made up, and the days after the last
 * check-in are unknown until the next one tells that they were rest. The order of rows in the history changes nothing,
 * nor does what it holds of days before the first one.
 */
export function buildView(history: ClientHistory, asOf: AsOf, limits: Limits = DEFAULT_LIMITS): ClientView {
  return viewFrom(history, asOf, limits, (joinedOn, last) => firstSeen(joinedOn, last, limits));
}

/** A year and what is drawn before it: more than the checks look back on. */
export const LONG_VIEW_DAYS = 400;

/** The same over the last `LONG_VIEW_DAYS`: what pages and reports draw. */
export function buildLongView(history: ClientHistory, asOf: AsOf, limits: Limits): ClientView {
  return viewFrom(history, asOf, limits, (_, last) => last - LONG_VIEW_DAYS + 1);
}

/**
 * The first day that the checks look at: `lookBackDays` back, and on to the last step of `lookBackStep` days since the
 * client joined, so that a view does not begin anew with each day.
 */
export function firstSeen(joinedOn: string | undefined, last: number, limits: Limits): number {
  const step = limits['day.lookBackStep'];
  const latest = last - limits['day.lookBackDays'] + 1;
  const since = latest - (joinedOn === undefined ? 0 : dayNumber(joinedOn));
  return latest - (((since % step) + step) % step);
}

/** The most days that the checks can look back on. */
export function mostDaysSeen(limits: Limits): number {
  return limits['day.lookBackDays'] + limits['day.lookBackStep'] - 1;
}

function viewFrom(
  history: ClientHistory,
  asOf: AsOf,
  limits: Limits,
  startsAt: (joinedOn: string | undefined, last: number) => number,
): ClientView {
  const last = dayNumber(asOf.date);
  const { joinedAt, zone } = history.client;
  const joinedOn = joinedAt === null ? undefined : localDateOf(new Date(joinedAt), zone);
  const start = startsAt(joinedOn, last);
  const byDay = checkInsByDay(history, start, last);
  const first = Math.max(start, firstDay(joinedOn, byDay, last));
  const rungs = new Map(history.rungs.map((rung) => [rung.id, rung]));
  const plans = plansThatHeld(history.plans).reverse();
  const planOn = (date: string) => planFor(plans, date);
  const states = dayStates(history, byDay, { first, last }, limits);
  const easy = easyDays(plans, first, last);

  const days: Day[] = states.map((state, index) => {
    const checkIns = byDay.get(first + index) ?? [];
    return {
      date: dateOfDayNumber(first + index),
      state,
      checkIns,
      sessionLoad: checkIns.length > 0 || state === 'unknown' ? sessionLoadOf(checkIns) : 0,
      easy: easy[index] === true,
      soft: checkIns.some(isOnSoftGround),
    };
  });

  return {
    history,
    asOf,
    limits,
    days,
    joinedOn,
    indexOf: indexFrom(first, days.length),
    memo: emptyMemo(),
    nothingNew: false,
    rungs,
    planOn,
    standing: standingOn(history.placements, asOf.date, rungs),
  };
}

/** Where a date is among `length` days from the `first` on, or -1. */
export function indexFrom(first: number, length: number): (date: string) => number {
  return (date) => {
    const index = dayNumber(date) - first;
    return index >= 0 && index < length ? index : -1;
  };
}

/** Check-ins of the days in between, by day, in one fixed order whatever the order of the rows. */
function checkInsByDay(history: ClientHistory, start: number, last: number): Map<number, HistoryCheckIn[]> {
  const byDay = new Map<number, HistoryCheckIn[]>();
  for (const checkIn of history.checkIns) {
    const day = dayNumber(checkIn.date);
    if (day < start || day > last) continue;
    const there = byDay.get(day);
    if (there) there.push(checkIn);
    else byDay.set(day, [checkIn]);
  }
  for (const checkIns of byDay.values()) if (checkIns.length > 1) checkIns.sort(bySending);
  return byDay;
}

function bySending(a: HistoryCheckIn, b: HistoryCheckIn): number {
  return compare(a.sentAt, b.sentAt) || compare(a.id, b.id);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The first check-in or the day of joining, whichever came first. */
function firstDay(joinedOn: string | undefined, byDay: ReadonlyMap<number, unknown>, last: number): number {
  let first = last;
  for (const day of byDay.keys()) if (day < first) first = day;
  return joinedOn === undefined ? first : Math.min(first, dayNumber(joinedOn));
}

type Span = { first: number; last: number };

function dayStates(
  history: ClientHistory,
  byDay: ReadonlyMap<number, HistoryCheckIn[]>,
  { first, last }: Span,
  limits: Limits,
): DayState[] {
  const states = new Array<DayState>(last - first + 1).fill('unknown');
  const logged = [...byDay.keys()].sort((a, b) => a - b);
  const gaps = logged.slice(1).map((day, index) => day - (logged[index] ?? day));
  const bridged = Math.max(limits['day.restGapDays'], limits['day.restGapOwnMedian'] * (median(gaps) ?? 0));
  logged.forEach((day, index) => {
    const next = logged[index + 1];
    if (next === undefined || next - day > bridged) return;
    for (let between = day + 1; between < next; between += 1) put(states, between - first, 'taken-as-rest');
  });
  for (const { from, to } of history.absences) {
    const end = Math.min(last, to === null ? last : dayNumber(to));
    for (let day = Math.max(first, dayNumber(from)); day <= end; day += 1) put(states, day - first, 'off');
  }
  for (const [day, checkIns] of byDay) {
    put(states, day - first, checkIns.some((checkIn) => checkIn.kind === 'training') ? 'trained' : 'rest');
  }
  return states;
}

function put(states: DayState[], index: number, state: DayState): void {
  if (index >= 0 && index < states.length) states[index] = state;
}

/** The plan that holds on a date, of plans newest first. */
function planFor(newestFirst: readonly HistoryPlan[], date: string): HistoryPlan | undefined {
  const plan = newestFirst.find((one) => one.from <= date);
  return plan && (plan.until === null || plan.until >= date) ? plan : undefined;
}

/** True for days inside an easy or a test week of the plan that was in force on them. */
export function easyDays(plans: readonly HistoryPlan[], first: number, last: number): boolean[] {
  const easy = new Array<boolean>(last - first + 1).fill(false);
  for (const plan of plans) {
    for (const week of [...plan.easyWeeks, ...plan.testWeeks]) {
      const start = dayNumber(week);
      for (let day = Math.max(first, start); day < start + 7 && day <= last; day += 1) {
        if (planFor(plans, dateOfDayNumber(day)) === plan) easy[day - first] = true;
      }
    }
  }
  return easy;
}
