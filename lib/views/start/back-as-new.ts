import { addDays } from '#lib/domain/local-date.ts';

/** Days away from which somebody starts as new. Common practice, no source. */
const AWAY_DAYS = 84;
/** Days for which the phone says so after the first check-in. */
const SAID_DAYS = 7;

/**
 * Whether the phone greets a client as one who starts anew: back by the coach's word, and nothing told in the 84 days
 * before this week. `dates`: local dates with a check-in of the last 91 days and more, in any order.
 */
export function isBackAsNew(standing: string, dates: readonly string[], today: string): boolean {
  const weekFrom = addDays(today, 1 - SAID_DAYS);
  return (
    standing === 'back' && !dates.some((date) => date < weekFrom && date >= addDays(weekFrom, -AWAY_DAYS))
  );
}
