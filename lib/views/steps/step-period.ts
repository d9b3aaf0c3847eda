import { addDays } from '#lib/domain/local-date.ts';
import { exactDate } from '../say-date.ts';

export const STEP_PERIODS = ['last-month', 'this-month', 'quarter', 'half-year', 'year'] as const;
export type StepPeriod = (typeof STEP_PERIODS)[number];

export const PERIOD_WORDS: Record<StepPeriod, string> = {
  'last-month': 'Last month',
  'this-month': 'This month',
  quarter: 'The last 90 days',
  'half-year': 'The last 180 days',
  year: 'The last 365 days',
};

const DAYS: Record<'quarter' | 'half-year' | 'year', number> = { quarter: 90, 'half-year': 180, year: 365 };

/** First and last day of a period, both with, seen from the coach's `today`. */
export function daysOfPeriod(period: StepPeriod, today: string): { from: string; to: string } {
  const first = `${today.slice(0, 8)}01`;
  if (period === 'this-month') return { from: first, to: today };
  if (period === 'last-month') {
    const to = addDays(first, -1);
    return { from: `${to.slice(0, 8)}01`, to };
  }
  return { from: addDays(today, 1 - DAYS[period]), to: today };
}

/** "Sunday 1 November 2026 to Monday 30 November 2026". */
export function periodInWords({ from, to }: { from: string; to: string }): string {
  return `${exactDate(from)} to ${exactDate(to)}`;
}
