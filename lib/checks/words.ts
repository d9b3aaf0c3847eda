import { dayNumber } from '#lib/domain/day-number.ts';
import type { HistoryRung } from '#lib/domain/history.ts';
import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import { monthName } from '#lib/domain/month-names.ts';
import type { Side } from '#lib/domain/vocabulary.ts';

/** 1970-01-01 was one. */
const THURSDAY = 4;
const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];

/** '2026-11-24' as "Tue 24 Nov". */
export function dayInWords(date: string): string {
  const weekday = (dayNumber(date) + THURSDAY) % 7;
  return `${DAYS[weekday] ?? ''} ${Number(date.slice(8, 10))} ${monthName(date).slice(0, 3)}`;
}

/** '2028-02-22' as "22 Feb 2028". */
export function dateInWords(date: string): string {
  return `${Number(date.slice(8, 10))} ${monthName(date).slice(0, 3)} ${date.slice(0, 4)}`;
}

/** At most `digits` decimals, none that say nothing: 5.50 as "5.5", 6.0 as "6". */
export function plainNumber(value: number, digits = 1): string {
  return String(Number(value.toFixed(digits)) + 0);
}

/** A share (0-1) as "78 %". */
export function asPercent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** A value in the rung's measure: "20 s", "5", "12°". */
export function inMeasure(value: number, rung: HistoryRung): string {
  const unit = MEASURE_UNITS[rung.measure];
  if (unit === '') return plainNumber(value);
  return unit === '°' ? `${plainNumber(value)}°` : `${plainNumber(value)} ${unit}`;
}

/** "3 × 20 s", or "8 of 10" for tries. */
export function passInWords(rung: HistoryRung): string {
  const { sets, target, tries } = rung.pass;
  if (rung.measure === 'made-tried') return `${target} of ${tries ?? target}`;
  return `${sets} × ${inMeasure(target, rung)}`;
}

/** "Toe pull, left"; both sides need no word. */
export function rungInWords(rung: HistoryRung, side: Side): string {
  return side === 'both' ? rung.name : `${rung.name}, ${side}`;
}

/** "1 day", "3 days". */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
