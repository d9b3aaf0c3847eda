import type { HistorySet } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import type { ClientView } from './types.ts';

/** One training day of one rung. */
export type RungDay = {
  date: string;
  /** Index in `view.days`: whole days, for slopes and distances. */
  at: number;
  sets: readonly HistorySet[];
  /** Counts for passes, slips and sides: no easy day, no soft ground, at least one value typed or timed. */
  counts: boolean;
  /** Highest effort of the day's check-ins with this rung; null when not said. */
  effort: number | null;
  /** When the first of them was sent, ISO. */
  sentAt: string;
};

// Kept with the view, which never changes once built: fourteen rules read the same days.
const known = new WeakMap<ClientView, ReadonlyMap<string, RungDay[]>>();

/** Training days of a rung, oldest first: local dates with at least one set of it done. Empty when never trained. */
export function rungDays(view: ClientView, rungId: string): readonly RungDay[] {
  let byRung = known.get(view);
  if (!byRung) {
    byRung = gather(view);
    known.set(view, byRung);
  }
  return byRung.get(rungId) ?? [];
}

/**
 * The days of the `length` days up to the last training day in the list: counted from there, silence takes nothing
 * away. Empty when that day is itself longer ago.
 */
export function recentDays<Day extends { at: number }>(
  view: ClientView,
  days: readonly Day[],
  length: number,
): Day[] {
  const newest = Math.max(...days.map((day) => day.at));
  if (view.days.length - 1 - newest >= length) return [];
  return days.filter((day) => newest - day.at < length);
}

function gather(view: ClientView): Map<string, RungDay[]> {
  const byRung = new Map<string, RungDay[]>();
  view.days.forEach((day, at) => {
    for (const checkIn of day.checkIns) {
      for (const set of checkIn.sets) {
        const days = byRung.get(set.rungId) ?? [];
        if (days.length === 0) byRung.set(set.rungId, days);
        let rungDay = days.at(-1);
        if (rungDay?.at !== at) {
          rungDay = { date: day.date, at, sets: [], counts: false, effort: null, sentAt: checkIn.sentAt };
          days.push(rungDay);
        }
        (rungDay.sets as HistorySet[]).push(set);
        rungDay.effort = highest(rungDay.effort, checkIn.effort);
        rungDay.counts ||= !day.easy && !day.soft && (set.how === 'typed' || set.how === 'timed');
      }
    }
  });
  for (const [rungId, days] of byRung) byRung.set(rungId, days.filter(wasTrained));
  return byRung;
}

function wasTrained(day: RungDay): boolean {
  return day.sets.some(hasResult);
}

function highest(a: number | null, b: number | null): number | null {
  if (a === null || b === null) return a ?? b;
  return Math.max(a, b);
}

/** A set with a result; `not-done` and empty ones have none. */
export function hasResult(set: HistorySet): set is HistorySet & { value: number } {
  return set.value !== null && set.how !== 'not-done';
}

/** Whether a set speaks about a side: its own, or both. */
export function isOfSide(set: { side: Side }, side: Side): boolean {
  return side === 'both' || set.side === 'both' || set.side === side;
}
