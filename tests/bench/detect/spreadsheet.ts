import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { addDays } from './calendar.ts';
import { FIRST_DAY, type Made } from './generator.ts';

/** The rules that people keep in a spreadsheet: what the checks have to beat. Each names what it says yes to. */
export type SheetRule = {
  name: string;
  /** The planted conditions that the rule is kept for. */
  beside: string[];
  /** `known`: check-ins up to the evening, oldest first. */
  says: (known: readonly HistoryCheckIn[], date: string) => string[];
};

/** When a rule began to say yes to something, and the last night on which it still did. */
export type SheetRaise = { day: number; until: number };

export function sheetRaises(made: Made, rule: SheetRule, from: number, to: number): SheetRaise[] {
  const { checkIns } = made.history;
  const raises: SheetRaise[] = [];
  let open = new Map<string, SheetRaise>();
  let upTo = 0;
  for (let day = from; day <= Math.min(to, made.days - 1); day += 1) {
    const date = addDays(FIRST_DAY, day);
    while (upTo < checkIns.length && (checkIns[upTo]?.date ?? '') <= date) upTo += 1;
    const now = new Map<string, SheetRaise>();
    for (const key of rule.says(checkIns.slice(0, upTo), date)) {
      const raise = open.get(key) ?? { day, until: day };
      if (raise.day === day) raises.push(raise);
      raise.until = day;
      now.set(key, raise);
    }
    open = now;
  }
  return raises;
}

function weekLoad(known: readonly HistoryCheckIn[], last: string, days: number): number {
  const first = addDays(last, 1 - days);
  let total = 0;
  for (const one of known)
    if (one.date >= first && one.date <= last) total += (one.effort ?? 0) * (one.minutes ?? 0);
  return total;
}

/** Of what was trained in the last 28 days: the date of the best value so far of each rung and side. */
function bestDates(known: readonly HistoryCheckIn[], date: string): Map<string, string> {
  const best = new Map<string, { last: string; value: number }>();
  const recent = new Set<string>();
  const from = addDays(date, -28);
  for (const one of known) {
    for (const set of one.sets) {
      const key = `${set.rungId} ${set.side}`;
      if (one.date > from) recent.add(key);
      if ((set.value ?? 0) > (best.get(key)?.value ?? 0))
        best.set(key, { last: one.date, value: set.value ?? 0 });
    }
  }
  return new Map([...best].filter(([key]) => recent.has(key)).map(([key, { last }]) => [key, last]));
}

function sidesOfLast(known: readonly HistoryCheckIn[]): string[] {
  const best = new Map<string, { left: number; right: number }>();
  for (const set of known.at(-1)?.sets ?? []) {
    if (set.side === 'both') continue;
    const pair = best.get(set.rungId) ?? { left: 0, right: 0 };
    pair[set.side] = Math.max(pair[set.side], set.value ?? 0);
    best.set(set.rungId, pair);
  }
  return [...best]
    .filter(([, { left, right }]) => Math.min(left, right) < 0.9 * Math.max(left, right))
    .map(([key]) => key);
}

const yes = (is: boolean) => (is ? ['yes'] : []);

export const SHEET_RULES: SheetRule[] = [
  {
    name: '10 % more than last week',
    beside: ['jump', 'jump-one-ladder'],
    says: (known, date) => yes(weekLoad(known, date, 7) > 1.1 * weekLoad(known, addDays(date, -7), 7)),
  },
  {
    name: 'acute:chronic over 1.5',
    beside: ['jump', 'jump-one-ladder'],
    says: (known, date) => yes(weekLoad(known, date, 7) > (1.5 * weekLoad(known, date, 28)) / 4),
  },
  {
    name: 'no new best for 14 days',
    beside: ['stall'],
    says: (known, date) => {
      const before = addDays(date, -14);
      return [...bestDates(known, date)].filter(([, last]) => last < before).map(([key]) => key);
    },
  },
  { name: '10 % left to right on the last session', beside: ['side'], says: sidesOfLast },
  {
    name: 'no log for 7 days',
    beside: ['quiet'],
    says: (known, date) => yes((known.at(-1)?.date ?? date) < addDays(date, -7)),
  },
];
