import { daysBetween } from '#lib/domain/local-date.ts';
import { monthName } from '#lib/domain/month-names.ts';

const DAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

type Parts = { weekday: string; day: number; month: string; year: number };

function parts(date: string): Parts {
  const at = new Date(`${date}T00:00:00.000Z`);
  return {
    weekday: DAYS[at.getUTCDay()] ?? '',
    day: at.getUTCDate(),
    month: monthName(date),
    year: at.getUTCFullYear(),
  };
}

/** A local date in full, for hover and for speech: `2026-11-25` is "Wednesday 25 November 2026". */
export function exactDate(date: string): string {
  const { weekday, day, month, year } = parts(date);
  return `${weekday} ${day} ${month} ${year}`;
}

/** A local date as a headline says it: "Wednesday 25 November". */
export function longDate(date: string): string {
  const { weekday, day, month } = parts(date);
  return `${weekday} ${day} ${month}`;
}

/** A local date in a few letters: "25 Nov". */
export function shortDate(date: string): string {
  const { day, month } = parts(date);
  return `${day} ${month.slice(0, 3)}`;
}

/**
 * A local date as people say it, seen from `today`: "today", "Wed" within the last six days, "Wed 18 Nov"
 * further away in either direction, with the year when it is another one.
 */
export function saidDate(date: string, today: string): string {
  const ago = daysBetween(date, today);
  if (ago === 0) return 'today';
  return ago > 0 && ago < 7 ? parts(date).weekday.slice(0, 3) : datedDay(date, today);
}

/** A local date with its weekday, always: "Wed 18 Nov", with the year when it is not the year of `today`. */
export function datedDay(date: string, today: string): string {
  const { weekday, day, month, year } = parts(date);
  const plain = `${weekday.slice(0, 3)} ${day} ${month.slice(0, 3)}`;
  return year === parts(today).year ? plain : `${plain} ${year}`;
}
