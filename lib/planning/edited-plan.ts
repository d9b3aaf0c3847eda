import type { HistoryPlan, HistoryPlanItem, HistoryRung } from '#lib/domain/history.ts';
import type { Support } from '#lib/domain/vocabulary.ts';

/** A line of a plan as edited: what the history carries of it, and what only the plan knows. */
export type EditedItem = HistoryPlanItem & {
  support?: Support | null | undefined;
  /** At least one day without this line between two with it. */
  notTwoDaysRunning?: boolean | undefined;
  /** It cannot be done with a floor and a wall alone. */
  needsKit?: boolean | undefined;
};
/** A session's own rest between sets and its warm-up; the trade's defaults where they are not written. */
export type EditedSession = { label: string; restSeconds: number | null; warmUpMinutes?: number | undefined };

/** A plan while it is written. A `HistoryPlan` is one too. */
export type EditedPlan = Omit<HistoryPlan, 'items'> & {
  items: EditedItem[];
  sessions?: EditedSession[] | undefined;
};

/** What is asked of a line in one session: sets, and the value of each; a line by minutes alone asks the pass mark. */
export type PlannedDose = { sets: number; value: number; tries: number | null };

export function doseOf(item: EditedItem, rung: HistoryRung): PlannedDose {
  return {
    sets: item.sets,
    value: item.target ?? rung.pass.target,
    tries: rung.measure === 'made-tried' ? (rung.pass.tries ?? null) : null,
  };
}

/** Left and right apart where the rung is done on each side. */
export function sidesOfItem(item: EditedItem, rung: HistoryRung): EditedItem['side'][] {
  return rung.eachSide && item.side === 'both' ? ['left', 'right'] : [item.side];
}
