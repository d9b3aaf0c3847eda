import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import { median } from '#lib/stats/median.ts';

/**
 * The date on which the next check-in may be expected: the last one plus the client's median gap in days,
 * tomorrow at the earliest. Tomorrow with fewer than two check-ins. `dates`: local dates with a check-in.
 */
export function nextCheckIn(dates: string[], today: string): string {
  const sorted = [...new Set(dates)].sort();
  const last = sorted.at(-1);
  const tomorrow = addDays(today, 1);
  if (last === undefined || sorted.length < 2) return tomorrow;
  const gaps = sorted.slice(1).map((date, index) => daysBetween(sorted[index] ?? date, date));
  return addDays(last, Math.max(Math.round(median(gaps) ?? 1), daysBetween(last, tomorrow)));
}
