import { dayNumber } from '#lib/domain/day-number.ts';
import type { HistoryAbsence, HistoryPlacement } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import type { Limits } from './thresholds.ts';
import type { RungTime } from './time-to-goal.ts';
import type { ClientView } from './types.ts';

/** What has to be known of a rung to count time on it. */
export type TimedRung = { id: string; position: number; usualWeeks: number };

const DAYS_A_WEEK = 7;

/**
 * Rungs of a ladder and side passed here, oldest first: from the placement on a rung to the next one on a higher rung,
 * pauses out. A move that skips rungs is one time for all of them. Left out: moves back, corrections of a placement
 * within `forecast.leastDays`, a first rung left within `stepUpEarned.startDays` ("placed too low"), rungs without a
 * usual time. Where both sides are asked for, the slower side counts. Nothing after `view.asOf.date` is read.
 */
export function passedRungs(
  view: ClientView,
  about: { ladderId: string; side: Side },
  rungs: readonly TimedRung[],
  limits: Limits,
): RungTime[] {
  const ofSide = (side: 'left' | 'right') =>
    passes(
      view.history.placements
        .filter((one) => one.ladderId === about.ladderId && (one.side === side || one.side === 'both'))
        .filter((one) => one.from <= view.asOf.date)
        .sort(byDate),
      { rungs, absences: view.history.absences },
      limits,
    );
  if (about.side !== 'both') return ofSide(about.side);
  const [left, right] = [ofSide('left'), ofSide('right')];
  const total = (times: readonly RungTime[]) => times.reduce((sum, time) => sum + time.days, 0);
  return total(right) > total(left) ? right : left;
}

/** Days from one date to another without those of a pause. */
export function daysWithoutPause(absences: readonly HistoryAbsence[], from: string, to: string): number {
  const [first, last] = [dayNumber(from), dayNumber(to)];
  const pauses = absences
    .filter((one) => one.kind === 'pause')
    .map((one) => ({ from: dayNumber(one.from), to: one.to === null ? last : dayNumber(one.to) }));
  let days = 0;
  for (let day = first; day < last; day += 1)
    if (!pauses.some((pause) => pause.from <= day && day <= pause.to)) days += 1;
  return days;
}

function passes(
  placements: readonly HistoryPlacement[],
  about: { rungs: readonly TimedRung[]; absences: readonly HistoryAbsence[] },
  limits: Limits,
): RungTime[] {
  const positions = new Map(about.rungs.map((rung) => [rung.id, rung.position]));
  const runs = placements.filter((one, index) => one.rungId !== placements[index - 1]?.rungId);
  return runs.flatMap((run, index) => {
    const next = runs[index + 1];
    const [low, high] = [positions.get(run.rungId), positions.get(next?.rungId ?? '')];
    if (!next || low === undefined || high === undefined || high <= low) return [];
    const days = daysWithoutPause(about.absences, run.from, next.from);
    if (days < limits['forecast.leastDays']) return [];
    if (index === 0 && days <= limits['stepUpEarned.startDays']) return [];
    const usualDays = about.rungs
      .filter((rung) => rung.position >= low && rung.position < high)
      .reduce((sum, rung) => sum + rung.usualWeeks * DAYS_A_WEEK, 0);
    return usualDays > 0 ? [{ days, usualDays }] : [];
  });
}

/** Of two on one day the one for a single side is the more exact, and comes last. */
function byDate(a: HistoryPlacement, b: HistoryPlacement): number {
  if (a.from !== b.from) return a.from < b.from ? -1 : 1;
  if (a.side !== b.side) return a.side === 'both' ? -1 : 1;
  return a.rungId < b.rungId ? -1 : 1;
}
