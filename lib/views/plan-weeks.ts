import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import { shortDate } from './say-date.ts';

const WEEK = 7;
/** Weeks that the form lists, at most, and for a plan without a last day. */
const MOST_WEEKS = 16;
const OPEN_WEEKS = 8;
const DATE = /^\d{4}-\d{2}-\d{2}$/;

export type PlanWeek = { date: string; label: string };

/** The weeks of a plan as first days, at most 16, for saying which are easy, for a test or without kit. */
export function weeksOf(from: string, until: string): PlanWeek[] {
  if (!DATE.test(from)) return [];
  const last = DATE.test(until) ? until : addDays(from, OPEN_WEEKS * WEEK - 1);
  return Array.from({ length: MOST_WEEKS }, (_, index) => addDays(from, WEEK * index))
    .filter((date) => date <= last)
    .map((date, index) => ({ date, label: `week ${index + 1}, from ${shortDate(date)}` }));
}

/**
 * Weeks named in an earlier version, as weeks of one that begins on `from`: a new week is of the kind when it begins in
 * a week that was, so that nothing is lost when the first day moves.
 */
export function carryWeeks(old: readonly string[], from: string, until: string): string[] {
  const within = (date: string) =>
    old.some((week) => {
      const after = daysBetween(week, date);
      return after >= 0 && after < WEEK;
    });
  return weeksOf(from, until).flatMap(({ date }) => (within(date) ? [date] : []));
}
