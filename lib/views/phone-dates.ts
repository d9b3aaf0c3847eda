import { addDays } from '#lib/domain/local-date.ts';

const utc = (options: Intl.DateTimeFormatOptions) =>
  new Intl.DateTimeFormat('en-GB', { timeZone: 'UTC', ...options });

/** "Tuesday 19 May" for a local date. */
export function longDate(date: string): string {
  return utc({ weekday: 'long', day: 'numeric', month: 'long' }).format(atNoon(date)).replace(',', '');
}

/** "Tue 19 May" for a local date. */
export function shortDate(date: string): string {
  return utc({ weekday: 'short', day: 'numeric', month: 'short' }).format(atNoon(date)).replace(',', '');
}

/** As people say it: "today", "yesterday", "Sunday" within the last six days, else "19 May". */
export function dayAsSaid(date: string, today: string): string {
  if (date === today) return 'today';
  if (date === addDays(today, -1)) return 'yesterday';
  if (date > addDays(today, -7) && date < today) return utc({ weekday: 'long' }).format(atNoon(date));
  return utc({ day: 'numeric', month: 'short' }).format(atNoon(date));
}

/** "Mon 08:10" for an instant, on the clock of a zone; with the date when it is not of the last six days. */
export function momentAsSaid(at: Date, zone: string, now: Date): string {
  const recent = now.getTime() - at.getTime() < 6 * 86_400_000;
  const day: Intl.DateTimeFormatOptions = recent ? { weekday: 'short' } : { day: 'numeric', month: 'short' };
  const clock: Intl.DateTimeFormatOptions = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' };
  const said = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat('en-GB', { timeZone: zone, ...options }).format(at);
  return `${said(day)} ${said(clock)}`;
}

function atNoon(date: string): Date {
  return new Date(`${date}T12:00:00Z`);
}
