import { addDays, daysBetween } from '#lib/domain/local-date.ts';

/** A client is new for as many days as most checks look back on (own choice). */
export const FIRST_DAYS = 28;
/** Days between two check-ins at most this far apart are taken as rest. */
const REST_GAP = 4;
const NAMED = 6;

/**
 * How many of the 28 days before `today` are known: a check-in, or between two that are at most four days apart.
 * `dates`: local dates with a check-in, in any order. 0 without any.
 */
export function daysKnown(dates: readonly string[], today: string): number {
  const from = addDays(today, -FIRST_DAYS);
  const inside = [...new Set(dates)].filter((date) => date >= from && date < today).sort();
  return inside.reduce((known, date, index) => {
    const before = inside[index - 1];
    const gap = before === undefined ? 1 : daysBetween(before, date);
    return known + (gap <= REST_GAP ? gap : 1);
  }, 0);
}

/** "Getting to know 3 clients: 12, 5 and 0 of 28 days"; one figure where all are alike, the span of many. */
export function gettingToKnowWords(days: readonly number[]): string {
  const figures = [...new Set(days)].sort((a, b) => b - a);
  const [most = 0, least = 0] = [figures[0], figures.at(-1)];
  const clients = days.length === 1 ? '1 client' : `${days.length} clients`;
  const last = figures.length > 1 ? ` and ${least}` : '';
  const said =
    figures.length > NAMED
      ? `${least} to ${most}`
      : `${(figures.length > 1 ? figures.slice(0, -1) : figures).join(', ')}${last}`;
  return `Getting to know ${clients}: ${said} of ${FIRST_DAYS} days`;
}
