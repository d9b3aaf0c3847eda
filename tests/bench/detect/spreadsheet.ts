import type { ClientHistory } from '#lib/domain/history.ts';
import { addDays } from './calendar.ts';

/** The rules that people keep in a spreadsheet: what the checks have to beat. Each says yes or no for one evening. */
export type SheetRule = {
  name: string;
  beside: string[];
  says: (history: ClientHistory, date: string) => boolean;
};

function weekLoad(history: ClientHistory, last: string, days: number): number {
  const first = addDays(last, 1 - days);
  let total = 0;
  for (const one of history.checkIns)
    if (one.date >= first && one.date <= last) total += (one.effort ?? 0) * (one.minutes ?? 0);
  return total;
}

function bests(history: ClientHistory, date: string): Map<string, { last: string; value: number }> {
  const best = new Map<string, { last: string; value: number }>();
  for (const one of history.checkIns) {
    if (one.date > date) continue;
    for (const set of one.sets) {
      const key = `${set.rungId} ${set.side}`;
      const held = best.get(key);
      if ((set.value ?? 0) > (held?.value ?? 0)) best.set(key, { last: one.date, value: set.value ?? 0 });
    }
  }
  return best;
}

function sidesOfLast(history: ClientHistory, date: string): boolean {
  const last = history.checkIns.filter((one) => one.date <= date).at(-1);
  const best = new Map<string, { left: number; right: number }>();
  for (const set of last?.sets ?? []) {
    if (set.side === 'both') continue;
    const pair = best.get(set.rungId) ?? { left: 0, right: 0 };
    pair[set.side] = Math.max(pair[set.side], set.value ?? 0);
    best.set(set.rungId, pair);
  }
  return [...best.values()].some(({ left, right }) => Math.min(left, right) < 0.9 * Math.max(left, right));
}

export const SHEET_RULES: SheetRule[] = [
  {
    name: '10 % more than last week',
    beside: ['load-jump'],
    says: (history, date) => weekLoad(history, date, 7) > 1.1 * weekLoad(history, addDays(date, -7), 7),
  },
  {
    name: 'acute:chronic over 1.5',
    beside: ['load-jump'],
    says: (history, date) => weekLoad(history, date, 7) > (1.5 * weekLoad(history, date, 28)) / 4,
  },
  {
    name: 'no new best for 14 days',
    beside: ['stalled', 'slipping'],
    says: (history, date) =>
      [...bests(history, date).values()].some((best) => best.last < addDays(date, -14)),
  },
  { name: '10 % left to right on the last session', beside: ['side-gap'], says: sidesOfLast },
  {
    name: 'no log for 7 days',
    beside: ['gone-quiet', 'fading'],
    says: (history, date) =>
      (history.checkIns.filter((one) => one.date <= date).at(-1)?.date ?? date) < addDays(date, -7),
  },
];
