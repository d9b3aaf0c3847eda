import type { HistorySet } from '#lib/domain/history.ts';
import { oncePerView } from './once-per-view.ts';
import type { ClientView } from './types.ts';
import { viewWork } from './view-work.ts';

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
  const byRung = new Map<string, Gathered[]>();
  for (const work of viewWork(view)) {
    const day = view.days[work.at];
    if (!day) continue;
    let days = byRung.get(work.rung.id);
    if (!days) {
      days = [];
      byRung.set(work.rung.id, days);
    }
    let there = days.at(-1);
    if (there?.at !== work.at) {
      const { sentAt, effort } = work.checkIn;
      there = { date: day.date, at: work.at, sets: work.sets, counts: false, effort, sentAt, trained: false };
      days.push(there);
    } else {
      there.sets = [...there.sets, ...work.sets];
      there.effort = highest(there.effort, work.checkIn.effort);
    }
    there.counts ||= work.isTyped && !day.easy && !day.soft;
    there.trained ||= work.hasResult;
  }
  for (const [rungId, days] of byRung) {
    if (!days.every(wasTrained)) byRung.set(rungId, days.filter(wasTrained));
  }
  return byRung;
}

type Gathered = RungDay & { trained: boolean };

function wasTrained({ trained }: Gathered): boolean {
  return trained;
}

function highest(a: number | null, b: number | null): number | null {
  if (a === null || b === null) return a ?? b;
  return Math.max(a, b);
}
