import type { TissueSide } from '#lib/checks/types.ts';
import type { BodyState, TissueState } from './body-state.ts';
import { factorsOf, secondsOf } from './drill-line.ts';
import type { DrillOption } from './drill-options.ts';
import { DOUBLE_LOAD_POINTS, SORE_FROM } from './gap-numbers.ts';

/** Load that a drill puts on one sore or already loaded tissue in a session, and what it counts. */
export type Strain = { key: TissueSide; load: number; state: TissueState; points: number };

/**
 * Load of one session of a drill (body-weight seconds) on each tissue that is sore (pain 3 and more) or loaded over its
 * usual week, with the points it counts a second: the pain, plus up to 10 for a week twice the usual. Heaviest first.
 */
export function strainOf(option: DrillOption, body: BodyState, bodyMassKg: number | null): Strain[] {
  const loads = new Map<TissueSide, number>();
  for (const line of option.lines) {
    const seconds = secondsOf(line);
    for (const { key, factor } of factorsOf(line, option.support, bodyMassKg))
      loads.set(key, (loads.get(key) ?? 0) + seconds * factor);
  }
  const strains = [...loads].flatMap(([key, load]): Strain[] => {
    const state = body.get(key);
    const points = state ? pointsOf(state) : 0;
    return state && points > 0 && load > 0 ? [{ key, load, state, points }] : [];
  });
  return strains.sort((a, b) => b.load * b.points - a.load * a.points || (a.key < b.key ? -1 : 1));
}

/** In whole numbers, so that the program is exact: body-weight seconds x points. */
export function strainCost(strains: readonly Strain[]): number {
  return Math.round(strains.reduce((sum, { load, points }) => sum + load * points, 0));
}

function pointsOf({ pain, overUsual }: TissueState): number {
  return (pain >= SORE_FROM ? pain : 0) + DOUBLE_LOAD_POINTS * Math.min(1, Math.max(0, overUsual));
}
