import { rungDays } from '#lib/checks/rung-days.ts';
import { sidePairs } from '#lib/checks/side-pairs.ts';
import { standingsOf } from '#lib/checks/standings.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import { median } from '#lib/stats/median.ts';

/** Left against right on one rung: the middle of each side over the last days on which both were trained. */
export type SidesOfRung = {
  rungId: string;
  rung: string;
  left: number;
  right: number;
  unit: string;
  days: number;
};

/** Rungs the client stands on that are done on each side, in the order of ladders. Days that say nothing are left out. */
export function sidesOfRungs(view: ClientView, limits: Limits): SidesOfRung[] {
  const rungs = new Map(standingsOf(view).map(({ rung }) => [rung.id, rung]));
  return [...rungs.values()].flatMap((rung) => {
    if (!rung.eachSide || rung.measure.startsWith('range')) return [];
    const pairs = sidePairs(rungDays(view, rung.id), rung).slice(-limits['sideGap.lastPairs']);
    const left = median(pairs.map((pair) => pair.left));
    const right = median(pairs.map((pair) => pair.right));
    if (left === undefined || right === undefined) return [];
    const unit = MEASURE_UNITS[rung.measure];
    return [{ rungId: rung.id, rung: rung.name, left, right, unit, days: pairs.length }];
  });
}
