import { loadFigures } from '#lib/checks/load-figures.ts';
import { loadsOf } from '#lib/checks/load-series.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import { TISSUE_LABELS, tissuesOfRegion } from '#lib/checks/tissues.ts';
import type { ClientView, TissueSide } from '#lib/checks/types.ts';
import { placeInWords } from '#lib/domain/labels.ts';
import type { Tissue } from '#lib/domain/vocabulary.ts';
import { OVER_USUAL_FROM, PAIN_DAYS } from './gap-numbers.ts';

/** How one tissue on one side is: worst pain (0-10) of late and where it was told; week of load over the usual one. */
export type TissueState = { pain: number; where: string; overUsual: number };
export type BodyState = ReadonlyMap<TissueSide, TissueState>;

const SIDES = ['left', 'right'] as const;

/**
 * Sore and loaded tissues from the history: joint or tendon pain of the last 14 days, and the last 7 days of load over
 * the usual week less 1 (0: under a tenth over, or too little is known). Tissues with neither are left out.
 */
export function bodyStateOf(view: ClientView, limits: Limits): BodyState {
  const state = new Map<TissueSide, TissueState>();
  for (const { checkIns } of view.days.slice(-PAIN_DAYS)) {
    for (const { region, side, value, kind } of checkIns.flatMap(({ pain }) => pain)) {
      if (kind !== 'joint' || value === 0) continue;
      const sides = side === 'middle' ? SIDES : [side];
      for (const each of sides)
        for (const tissue of tissuesOfRegion(region))
          notePain(state, `${tissue}:${each}`, { pain: value, where: placeInWords(region, side) });
    }
  }
  for (const [key, series] of loadsOf(view).tissues) {
    const { week, usual } = loadFigures(view, series, limits);
    if (!usual.enough || usual.usual <= 0) continue;
    const overUsual = week.total / usual.usual - 1;
    if (overUsual < OVER_USUAL_FROM) continue;
    const known = state.get(key) ?? { pain: 0, where: '', overUsual: 0 };
    state.set(key, { ...known, overUsual });
  }
  return state;
}

/** Keeps the worst pain of a tissue. Changes the map. */
export function notePain(
  state: Map<TissueSide, TissueState>,
  key: TissueSide,
  told: { pain: number; where: string },
): void {
  const known = state.get(key) ?? { pain: 0, where: '', overUsual: 0 };
  const worse =
    told.pain > known.pain || (told.pain === known.pain && told.where < known.where && known.pain > 0);
  if (worse) state.set(key, { ...known, ...told });
}

/** "left wrist bent back". */
export function tissueSideInWords(key: TissueSide): string {
  const [tissue = '', side = ''] = key.split(':');
  return `${side} ${TISSUE_LABELS[tissue as Tissue]}`;
}
