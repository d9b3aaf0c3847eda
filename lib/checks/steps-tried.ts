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
  const dates = [
    standing.from,
    lastPlanChange(view, standing.rung.ladderId) ?? '',
    stepsOn(view, standing).at(-1)?.takenOn ?? '',
  ].filter((date) => date !== '');
  const newest = dates.sort().at(-1) ?? standing.from;
  return daysBetween(newest, view.asOf.date);
}

function stepsOn(view: ClientView, { rung, side }: Standing): HistoryStep[] {
  const same = (step: HistoryStep) =>
    step.side === null || step.side === 'both' || side === 'both' || step.side === side;
  return view.history.steps
    .filter((step) => step.ladderId === rung.ladderId && step.takenOn <= view.asOf.date && same(step))
    .sort((a, b) => (a.takenOn === b.takenOn ? (a.kind < b.kind ? -1 : 1) : a.takenOn < b.takenOn ? -1 : 1));
}
