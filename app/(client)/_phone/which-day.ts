import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import type { Draft } from './draft.ts';

/** Until this hour of the night a training may well have been yesterday's (own choice). */
const NIGHT_UNTIL_HOUR = 4;

/**
 * The days to choose from when it cannot be known which one is meant: filled in on a later day than it was begun, or in
 * the small hours. The first is the one the draft has now. Empty: no question. A day told by hand is not asked about.
 */
export function daysToAsk(draft: Draft, now: Date, zone: string): string[] {
  if (draft.dayTold || draft.correctsId !== null) return [];
  const today = localDateOf(now, zone);
  const other = localDateOf(new Date(draft.startedAt), zone) < today ? today : nightBefore(now, zone, today);
  return other === null || other === draft.date ? [] : [draft.date, other];
}

function nightBefore(now: Date, zone: string, today: string): string | null {
  const clock = new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', hourCycle: 'h23' });
  return Number(clock.format(now)) < NIGHT_UNTIL_HOUR ? addDays(today, -1) : null;
}
