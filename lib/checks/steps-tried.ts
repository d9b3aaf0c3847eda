import type { HistoryStep } from '#lib/domain/history.ts';
import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import { lastPlanChange } from './plan-items.ts';
import type { Standing } from './standings.ts';
import type { Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';

/** The newest step on this ladder and side that is still being tried: until its review date. */
export function stepBeingTried(
  view: ClientView,
  standing: Standing,
  limits: Limits,
): HistoryStep | undefined {
  return stepsOn(view, standing)
    .filter((step) => (step.reviewOn ?? addDays(step.takenOn, limits['stalled.triedDays'])) > view.asOf.date)
    .at(-1);
}

/** Whole days since anything changed on this ladder: a placement, what the plan asks, a step. */
export function daysSinceChange(view: ClientView, standing: Standing): number {
  let newest = standing.from;
  const [planned, tried] = [lastPlanChange(view, standing.rung.ladderId), stepsOn(view, standing).at(-1)];
  if (planned !== undefined && planned > newest) newest = planned;
  if (tried && tried.takenOn > newest) newest = tried.takenOn;
  return daysBetween(newest, view.asOf.date);
}

function stepsOn(view: ClientView, { rung, side }: Standing): HistoryStep[] {
  return view.history.steps
    .filter(
      (step) =>
        step.ladderId === rung.ladderId && step.takenOn <= view.asOf.date && isOnSide(step.side, side),
    )
    .sort((a, b) => (a.takenOn === b.takenOn ? (a.kind < b.kind ? -1 : 1) : a.takenOn < b.takenOn ? -1 : 1));
}

function isOnSide(step: HistoryStep['side'], side: Standing['side']): boolean {
  return step === null || step === 'both' || side === 'both' || step === side;
}
