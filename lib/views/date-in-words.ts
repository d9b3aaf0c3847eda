import { daysBetween } from '#lib/domain/local-date.ts';

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** "21 May". */
export function dayAndMonth(date: string): string {
  return `${Number(date.slice(8, 10))} ${MONTHS[Number(date.slice(5, 7)) - 1] ?? ''}`;
}

/** "Tue 19 May", with the year when it is more than half a year from `today`; "today", "yesterday". */
export function dateInWords(date: string, today: string): string {
  const ago = daysBetween(date, today);
  if (ago === 0) return 'today';
  if (ago === 1) return 'yesterday';
  const words = `${weekday(date)} ${dayAndMonth(date)}`;
  return Math.abs(ago) > 183 ? `${words} ${date.slice(0, 4)}` : words;
}

/** "Tue". */
export function weekday(date: string): string {
  return WEEKDAYS[new Date(`${date}T00:00:00Z`).getUTCDay()] ?? '';
}

/** "October 2025", of a local date. */
export function monthAndYear(date: string): string {
  const name = new Intl.DateTimeFormat('en-GB', { month: 'long', timeZone: 'UTC' }).format(
    new Date(`${date}T00:00:00Z`),
  );
  return `${name} ${date.slice(0, 4)}`;
}

/** "07:40" in a zone. */
export function clockTime(instant: string, zone: string): string {
  return new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone: zone }).format(
    new Date(instant),
  );
}
