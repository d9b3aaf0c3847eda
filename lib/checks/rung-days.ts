import type { HistorySet } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { oncePerView } from './once-per-view.ts';
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

const byRungOf = oncePerView(gather);
const NONE: readonly RungDay[] = [];

/** Training days of a rung, oldest first: local dates with at least one set of it done. Empty when never trained. */
export function rungDays(view: ClientView, rungId: string): readonly RungDay[] {
  return byRungOf(view).get(rungId) ?? NONE;
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
    const canCount = !day.easy && !day.soft;
    for (const checkIn of day.checkIns) {
      // Sets of one rung follow each other: look up once a rung, not once a set.
      let rungDay: (RungDay & { sets: HistorySet[] }) | undefined;
      let rungId = '';
      for (const set of checkIn.sets) {
        if (!rungDay || set.rungId !== rungId) {
          rungId = set.rungId;
          rungDay = dayOf(byRung, rungId, { date: day.date, at, sentAt: checkIn.sentAt });
          rungDay.effort = highest(rungDay.effort, checkIn.effort);
        }
        rungDay.sets.push(set);
        rungDay.counts ||= canCount && (set.how === 'typed' || set.how === 'timed');
      }
    }
  });
  for (const [rungId, days] of byRung)
    if (!days.every(wasTrained)) byRung.set(rungId, days.filter(wasTrained));
  return byRung;
}

/** The day of the list of its rung; made when it is not there. */
function dayOf(
  byRung: Map<string, RungDay[]>,
  rungId: string,
  { date, at, sentAt }: Pick<RungDay, 'date' | 'at' | 'sentAt'>,
) {
  let days = byRung.get(rungId);
  if (!days) {
    days = [];
    byRung.set(rungId, days);
  }
  const last = days.at(-1);
  if (last?.at === at) return last as RungDay & { sets: HistorySet[] };
  const made = { date, at, sets: [] as HistorySet[], counts: false, effort: null, sentAt };
  days.push(made);
  return made as RungDay & { sets: HistorySet[] };
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
