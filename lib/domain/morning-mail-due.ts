import { isZone, localDateOf } from './local-date.ts';
import { localHourOf } from './local-hour.ts';

const STEP_MS = 15 * 60_000;
/** No clock change takes more than the last three hours of a day; after 20:00 at most six are left. */
const EARLIEST_LAST_HOUR = 20;
const LONGEST_REST_MS = 6 * 60 * 60_000;

/**
 * The local date whose morning mail is due at an instant, or null: from the hour (0-23) of the member's wall clock on,
 * once a date, never for one before the last decided. An hour that a clock change skips is due at the first moment after
 * it, on a day that ends before it in its last hour; one that comes twice counts the first time. Whoever asks late, as a
 * machine that slept, gets today's and no other. An unknown zone counts as UTC.
 */
export function morningMailDue(
  member: { zone: string; hour: number; decidedOn: string | null },
  now: Date,
): string | null {
  const zone = isZone(member.zone) ? member.zone : 'UTC';
  const date = localDateOf(now, zone);
  if (member.decidedOn !== null && member.decidedOn >= date) return null;
  const hour = localHourOf(now, zone);
  if (hour >= member.hour) return date;
  if (hour < EARLIEST_LAST_HOUR) return null;
  return hour >= lastHourOf(date, zone, now) ? date : null;
}

/** The latest hour that the rest of this local date has on its clock. */
function lastHourOf(date: string, zone: string, now: Date): number {
  let last = localHourOf(now, zone);
  for (let ahead = STEP_MS; ahead <= LONGEST_REST_MS; ahead += STEP_MS) {
    const at = new Date(now.getTime() + ahead);
    if (localDateOf(at, zone) !== date) break;
    last = Math.max(last, localHourOf(at, zone));
  }
  return last;
}
