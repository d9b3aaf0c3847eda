import { dateOfDayNumber, dayNumber } from './day-number.ts';

/** True for a calendar date 'YYYY-MM-DD' that exists, from the year 2000 on. 30 February does not. */
export function isLocalDate(text: string): boolean {
  if (!/^[2-9]\d{3}-\d{2}-\d{2}$/.test(text)) return false;
  const date = new Date(`${text}T00:00:00.000Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().slice(0, 10) === text;
}

/** The local date 'YYYY-MM-DD' of an instant in a zone (IANA name). */
export function localDateOf(instant: Date, zone: string): string {
  return formatterOf(zone).format(instant);
}

/** Making a formatter costs a hundred times what using it does, and a night asks for thousands. */
const formatters = new Map<string, Intl.DateTimeFormat>();

function formatterOf(zone: string): Intl.DateTimeFormat {
  const known = formatters.get(zone);
  if (known) return known;
  const made = new Intl.DateTimeFormat('en-CA', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  });
  formatters.set(zone, made);
  return made;
}

/** `date` moved by whole days; may be negative. */
export function addDays(date: string, days: number): string {
  return dateOfDayNumber(dayNumber(date) + days);
}

/** Whole days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}

/** True for a zone name that this machine knows, such as Europe/Lisbon. Bare offsets are refused. */
export function isZone(name: string): boolean {
  if (!/^[A-Za-z][A-Za-z0-9_+/-]{1,63}$/.test(name)) return false;
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}
