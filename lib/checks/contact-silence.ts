import { dayNumber } from '#lib/domain/day-number.ts';
import { newStartAt } from './new-start.ts';
import type { ClientView } from './types.ts';

/** Standings in which nothing is expected of the client and nothing fires. */
export function isResting(view: ClientView): boolean {
  return view.history.client.standing === 'paused' || view.history.client.standing === 'left';
}

export type Silence = {
  lastDate: string;
  /** Days since the last check-in, days off left out. */
  days: number;
  /** Longest time from one check-in to the next within the look back, days off left out; 0 under two check-ins. */
  longestGap: number;
};

/** How long a client has been silent, against the own longest gap; `undefined` before the first check-in. */
export function silenceOf(view: ClientView, gapDays: number): Silence | undefined {
  const { days } = view;
  const start = newStartAt(view);
  let last = -1;
  let longestGap = 0;
  let off = 0;
  let since = 0;
  days.forEach((day, index) => {
    if (day.checkIns.length > 0) {
      const gap = index - last - off;
      // The absence that somebody came back from as new is no gap of theirs.
      if (last >= 0 && index > days.length - 1 - gapDays && index > start)
        longestGap = Math.max(longestGap, gap);
      last = index;
      off = 0;
      since = 0;
      return;
    }
    if (day.state === 'off') off += 1;
    else since += 1;
  });
  const lastDay = days[last];
  return lastDay && { lastDate: lastDay.date, days: since, longestGap };
}

/** Whole days from a date to the last day of the view; negative when it lies ahead. */
export function daysAgo(view: ClientView, date: string): number {
  return dayNumber(view.asOf.date) - dayNumber(date);
}
