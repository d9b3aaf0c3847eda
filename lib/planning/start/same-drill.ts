import type { Side } from '#lib/domain/vocabulary.ts';
import type { GapLadder, GapRung } from '../gaps/gap-types.ts';

/** A range is measured once, whatever rung it reaches. */
export function isRange({ measure }: Pick<GapRung, 'measure'>): boolean {
  return measure === 'range-up' || measure === 'range-down';
}

/** Whether one test speaks of both rungs of a ladder: the same drill with another pass mark, or the same range. */
export function isSameDrill(a: GapRung, b: GapRung): boolean {
  if (a.measure !== b.measure || a.eachSide !== b.eachSide) return false;
  return isRange(a) || a.name === b.name;
}

/** Rungs of the same drill, easiest first. */
export function rungsOfDrill(ladder: GapLadder, rung: GapRung): GapRung[] {
  return ladder.rungs.filter((one) => isSameDrill(one, rung));
}

/** The sides a rung is asked and placed on: each apart where hands differ; legs alternate on both hands. */
export function sidesOf(rung: Pick<GapRung, 'eachSide' | 'eachIsLeg'>): Side[] {
  return rung.eachSide && !rung.eachIsLeg ? ['left', 'right'] : ['both'];
}
