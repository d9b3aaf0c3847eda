import { Temporal } from 'temporal-polyfill';

/**
 * When the night of a local date is due: 03:00 of the next date where the client lives, as the database says it
 * (`night_due_at`). An hour that the clocks skip counts by the clock before the change, one that comes twice is the
 * second. ISO 8601 in UTC.
 */
export function nightInstant(date: string, zone: string): string {
  const instant = Temporal.PlainDate.from(date)
    .add({ days: 1 })
    .toPlainDateTime({ hour: 3 })
    .toZonedDateTime(zone, { disambiguation: 'later' })
    .toInstant();
  return new Date(instant.epochMilliseconds).toISOString();
}
