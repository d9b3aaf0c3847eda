import { dayNumber } from '#lib/domain/day-number.ts';
import type { HistoryPlan } from '#lib/domain/history.ts';

export type WeekKind = 'ordinary' | 'easy' | 'test';

const WEEK_DAYS = 7;

/**
 * Share of the sets done in an easy week: about half, with rungs and targets as they are. Common practice; near the
 * 41-60 % less volume of Bosquet et al. 2007 (Med Sci Sports Exerc 39(8):1358-1365), who studied tapers.
 */
export const EASY_WEEK_SHARE = 0.5;

/** What kind of week a date lies in; a week has seven days from the date it is named by. */
export function weekKind(plan: Pick<HistoryPlan, 'easyWeeks' | 'testWeeks'>, date: string): WeekKind {
  const day = dayNumber(date);
  const holds = (week: string) => day >= dayNumber(week) && day < dayNumber(week) + WEEK_DAYS;
  if (plan.easyWeeks.some(holds)) return 'easy';
  return plan.testWeeks.some(holds) ? 'test' : 'ordinary';
}

/** Sets of an easy week, rounded up: never none. */
export function easySets(sets: number): number {
  return Math.ceil(sets * EASY_WEEK_SHARE);
}
