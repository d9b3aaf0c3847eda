import type { Edited, LadderEdit } from './ladder-edit.ts';
import { type DrillState, drillOf, type LadderState, type RungState } from './ladder-state.ts';

/** Weeks are kept in halves; a step takes at least one half (own choice). */
const HALF_WEEK = 0.5;

/**
 * Puts smaller steps below a rung. The rung stays as the last of them, so that whoever stands on it goes on standing
 * on it; its usual weeks are shared out. A step with a weight of its own gets a drill of its own.
 */
export function splitRung(
  state: LadderState,
  edit: Extract<LadderEdit, { act: 'split' }>,
  newId: () => string,
): Edited {
  const at = state.rungs.findIndex((rung) => rung.id === edit.rungId);
  const rung = state.rungs[at];
  const drill = rung && drillOf(state, rung);
  if (!rung || !drill) return { wrong: { rungId: 'is not a rung of this ladder' } };
  if (rung.retired) return { wrong: { rungId: 'is retired: put it back before splitting it' } };
  const usualWeeks = weeksEach(rung.usualWeeks, edit.steps.length + 1);
  const made: { rung: RungState; drill: DrillState | undefined }[] = edit.steps.map((step) => {
    const own =
      step.weight === null || edit.tissue === null
        ? undefined
        : {
            ...drill,
            id: newId(),
            name: step.name,
            weights: { ...drill.weights, [edit.tissue]: step.weight },
          };
    return {
      drill: own,
      rung: {
        id: newId(),
        drillId: own?.id ?? drill.id,
        name: step.name,
        pass: step.pass,
        usualWeeks,
        needsFilm: false,
        note: '',
        retired: false,
        swaps: [],
      },
    };
  });
  const steps = made.map((one) => one.rung);
  return {
    state: {
      ...state,
      rungs: state.rungs.toSpliced(at, 1, ...steps, { ...rung, usualWeeks }),
      drills: [...state.drills, ...made.flatMap((one) => one.drill ?? [])],
    },
  };
}

/** Usual weeks of each of `count` steps that together were one rung, in half weeks. */
export function weeksEach(usualWeeks: number, count: number): number {
  return Math.max(HALF_WEEK, Math.round(usualWeeks / count / HALF_WEEK) * HALF_WEEK);
}
