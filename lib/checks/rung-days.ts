import type { HistorySet } from '#lib/domain/history.ts';
import { oncePerCheckIns } from './once-per-view.ts';
import type { RungWork } from './rung-work.ts';
import type { ClientView } from './types.ts';
import { newByRung, workByRung } from './view-work.ts';

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

/** Training days of a rung, oldest first: local dates with at least one set of it done. Empty when never trained. */
export function rungDays(view: ClientView, rungId: string): readonly RungDay[] {
  const known = daysByRung(view);
  let days = known.get(rungId);
  if (!days) {
    days = gather(view, workByRung(view).get(rungId) ?? []);
    known.set(rungId, days);
  }
  return days;
}

const daysByRung = oncePerCheckIns(
  () => new Map<string, RungDay[]>(),
  (view, before) => new Map([...before].filter(([rungId]) => !newByRung(view).has(rungId))),
);

/**
 * The days of the `length` days up to the last training day in the list: counted from there, silence takes nothing
 * away. Empty when that day is itself longer ago.
 */
export function recentDays<Day extends { at: number }>(
  view: ClientView,
  days: readonly Day[],
  length: number,
): Day[] {
  let newest = -1;
  for (const { at } of days) if (at > newest) newest = at;
  if (newest < 0 || view.days.length - 1 - newest >= length) return [];
  return days.filter((day) => newest - day.at < length);
}

function gather(view: ClientView, works: readonly RungWork[]): RungDay[] {
  const days: Gathered[] = [];
  let there: Gathered | undefined;
  for (const { at, checkIn, sets, isTyped, hasResult } of works) {
    const day = view.days[at];
    if (!day) continue;
    if (there?.at === at) {
      there.sets = [...there.sets, ...sets];
      there.effort = highest(there.effort, checkIn.effort);
    } else {
      const { sentAt, effort } = checkIn;
      there = { date: day.date, at, sets, counts: false, effort, sentAt, trained: false };
      days.push(there);
    }
    there.counts ||= isTyped && !day.easy && !day.soft;
    there.trained ||= hasResult;
  }
  return days.every(wasTrained) ? days : days.filter(wasTrained);
}

type Gathered = RungDay & { trained: boolean };

function wasTrained({ trained }: Gathered): boolean {
  return trained;
}

function highest(a: number | null, b: number | null): number | null {
  if (a === null || b === null) return a ?? b;
  return Math.max(a, b);
}
