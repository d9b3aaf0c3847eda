import { dayNumber } from '#lib/domain/day-number.ts';
import type { AnsweringHours } from '#lib/domain/history.ts';
import { localDateOf } from '#lib/domain/local-date.ts';

const HOUR = 3_600_000;
const MINUTE = 60_000;

/**
 * Hours from `from` to `to` (ISO instants) that fall into the team's answering hours; all of them when there are none.
 * Counting stops once `enough` hours are reached: the answer is then at least that.
 */
export function hoursWaited(
  from: string,
  to: string,
  answering: AnsweringHours | undefined,
  enough = Number.POSITIVE_INFINITY,
): number {
  const start = Date.parse(from);
  const end = Date.parse(to);
  if (!(end > start)) return 0;
  if (!answering || answering.days.length === 0) return (end - start) / HOUR;
  let waited = 0;
  const lastDay = dayNumber(localDateOf(new Date(end), answering.zone));
  for (let day = dayNumber(localDateOf(new Date(start), answering.zone)); day <= lastDay; day += 1) {
    if (!answering.days.includes(weekday(day))) continue;
    const opens = instantOf(day, answering.from, answering.zone);
    const closes = instantOf(day, answering.to, answering.zone);
    waited += Math.max(0, Math.min(end, closes) - Math.max(start, opens));
    if (waited >= enough * HOUR) break;
  }
  return waited / HOUR;
}

/** 1 Monday to 7 Sunday; day 0 was a Thursday. */
function weekday(day: number): number {
  return ((((day + 3) % 7) + 7) % 7) + 1;
}

/** The instant of a wall-clock time 'HH:MM' ('24:00' too) on a local day of a zone. */
function instantOf(day: number, time: string, zone: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  const asUtc = day * 24 * HOUR + hours * HOUR + minutes * MINUTE;
  // Twice: the first guess of the offset can lie on the wrong side of a clock change.
  const guess = asUtc - offsetAt(asUtc, zone);
  return asUtc - offsetAt(guess, zone);
}

/** How far a zone's clock is ahead of UTC at an instant, ms. */
function offsetAt(instant: number, zone: string): number {
  const parts = clockOf(zone).formatToParts(new Date(instant));
  const part = (type: string) => Number(parts.find((one) => one.type === type)?.value ?? 0);
  const date = `${parts.find((one) => one.type === 'year')?.value ?? '1970'}-${two(part('month'))}-${two(part('day'))}`;
  const shown = dayNumber(date) * 24 * HOUR + part('hour') * HOUR + part('minute') * MINUTE;
  return shown - Math.floor(instant / MINUTE) * MINUTE;
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}

const clocks = new Map<string, Intl.DateTimeFormat>();

function clockOf(zone: string): Intl.DateTimeFormat {
  const known = clocks.get(zone);
  if (known) return known;
  const made = new Intl.DateTimeFormat('en-CA', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  });
  clocks.set(zone, made);
  return made;
}
