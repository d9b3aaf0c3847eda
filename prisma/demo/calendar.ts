import { Temporal } from 'temporal-polyfill';

export const DEMO_WEEKS = 26;

/** Local date `days` later (earlier when negative). */
export function addDays(date: string, days: number): string {
  return Temporal.PlainDate.from(date).add({ days }).toString();
}

/** Weeks of the demo run 1 to 26, days 1 to 7; day 7 of week 26 is yesterday. */
export function demoDate(today: string, week: number, day: number): string {
  return addDays(today, (week - DEMO_WEEKS) * 7 + day - 8);
}

/** Days from the first date to the second. */
export function daysBetween(from: string, to: string): number {
  return Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to), { largestUnit: 'day' }).days;
}

/** 1 Monday to 7 Sunday. */
export function weekdayOf(date: string): number {
  return Temporal.PlainDate.from(date).dayOfWeek;
}

/** The first of these seven days, counted from `date`, that is the weekday (1 Monday). */
export function onWeekday(date: string, weekday: number): string {
  return addDays(date, (weekday - weekdayOf(date) + 7) % 7);
}

/** The instant of a wall-clock time `HH:MM` in a zone, ISO in UTC. */
export function instantAt(date: string, time: string, zone: string): string {
  const at = Temporal.PlainDate.from(date).toZonedDateTime({
    timeZone: zone,
    plainTime: Temporal.PlainTime.from(time),
  });
  return new Date(at.epochMilliseconds).toISOString();
}
