import type { Edited, LadderEdit } from './ladder-edit.ts';
import type { LadderState } from './ladder-state.ts';
import { inOrder } from './number-rungs.ts';

export function editedAbout(
  state: LadderState,
  { act: _act, ...about }: Extract<LadderEdit, { act: 'about' }>,
): LadderState {
  return { ...state, ...about };
}

export function editedOrder(state: LadderState, rungIds: string[]): Edited {
  const rungs = inOrder(state.rungs, rungIds);
  return rungs
    ? { state: { ...state, rungs } }
    : { wrong: { rungIds: 'must name each rung in use once: load the ladder again' } };
}

export function retired(state: LadderState, rungId: string, isRetired: boolean): Edited {
  if (!state.rungs.some((rung) => rung.id === rungId))
    return { wrong: { rungId: 'is not a rung of this ladder' } };
  const rungs = state.rungs.map((rung) => (rung.id === rungId ? { ...rung, retired: isRetired } : rung));
  return { state: { ...state, rungs } };
}
