import type { GapLadder, GapRung } from './gap-types.ts';

/** Ladders of a skill in their order. */
export function laddersOfSkill(library: readonly GapLadder[], skillId: string): GapLadder[] {
  return library.filter((ladder) => ladder.skillId === skillId && ladder.rungs.length > 0);
}

/**
 * The aim to begin with: the last rung of the ladder that most has to stand before (the later one of equals).
 * Undefined for a skill without ladders.
 */
export function usualAim(library: readonly GapLadder[], skillId: string): GapRung | undefined {
  const asks = (ladder: GapLadder) => ladder.openings.reduce((sum, one) => sum + one.needsAll.length, 0);
  const [first, ...others] = laddersOfSkill(library, skillId);
  if (!first) return undefined;
  const main = others.reduce((best, one) => (asks(one) >= asks(best) ? one : best), first);
  return main.rungs.at(-1);
}
