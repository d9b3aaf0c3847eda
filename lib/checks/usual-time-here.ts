import type { UsualDaysHere } from '#lib/domain/history.ts';
import { type Duration, kaplanMeierMedian } from '#lib/stats/kaplan-meier.ts';
import type { Limits } from './thresholds.ts';

/** One stay of a client of the team on a rung: whole days, and whether it ended by a step to a higher rung. */
export type Stay = { clientId: string; days: number; passed: boolean };

/**
 * How long a rung takes the clients of a team: the Kaplan-Meier median (Kaplan & Meier 1958) of their stays, in days,
 * with the number of clients who passed it. Still there, moved back and left are censored; a step up within
 * `forecast.leastDays` was a wrong placement and is left out. Undefined while half of them are still on the rung.
 */
export function usualTimeHere(stays: readonly Stay[], limits: Limits): UsualDaysHere | undefined {
  const counted = stays.filter((stay) => !stay.passed || stay.days >= limits['forecast.leastDays']);
  const durations: Duration[] = counted.map(({ days, passed }) => ({ time: days, ended: passed }));
  const days = kaplanMeierMedian(durations);
  if (days === undefined) return undefined;
  return { days, passed: new Set(counted.filter((one) => one.passed).map((one) => one.clientId)).size };
}
