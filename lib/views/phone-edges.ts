import { bestHolds, daysOn, kindsOfHold } from '#lib/checks/holds-of-window.ts';
import { recentDays } from '#lib/checks/rung-days.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import type { HistoryRung } from '#lib/domain/history.ts';
import { median } from '#lib/stats/median.ts';

/** Both edges of the balance window on one kind of hold: the middle of the best clean hold of each day, s. */
export type WindowEdges = {
  name: string;
  /** Over how many days they were looked for. */
  withinDays: number;
  heel: { seconds: number; days: number } | null;
  toe: { seconds: number; days: number } | null;
};

/** The client's balance window over the last days in which it was trained; kinds not trained then are left out. */
export function windowEdges(view: ClientView, limits: Limits): WindowEdges[] {
  return kindsOfHold(view).flatMap(({ name, over, under }) => {
    const recent = recentDays(view, daysOn(view, [...over, ...under]), limits['windowGap.days']);
    const edge = (rungs: readonly HistoryRung[]) => {
      const holds = bestHolds(recent, rungs);
      const seconds = median(holds);
      return seconds === undefined ? null : { seconds, days: holds.length };
    };
    const [heel, toe] = [edge(over), edge(under)];
    return heel || toe ? [{ name, withinDays: limits['windowGap.days'], heel, toe }] : [];
  });
}
