import type { HistoryPlan } from '#lib/domain/history.ts';
import type { Family } from '#lib/domain/vocabulary.ts';
import { MOST_STRENGTH_A_SESSION } from './gap-numbers.ts';
import type { GapLadder } from './gap-types.ts';

const STRENGTH: readonly Family[] = [
  'bent-arm-push',
  'bent-arm-pull',
  'straight-arm-push',
  'straight-arm-pull',
];

export function isStrength(family: Family): boolean {
  return STRENGTH.includes(family);
}

/** Strength drills a session still takes: four less those of other skills that the plan keeps there. */
export type Room = { session: string; kept: string[]; room: number };

/**
 * Room for strength drills in each session, in the order given. Kept: strength ladders of the plan that the assessment
 * does not ask about.
 */
export function strengthRoom(
  sessions: readonly string[],
  plan: HistoryPlan | null,
  library: readonly GapLadder[],
  asked: ReadonlySet<string>,
): Room[] {
  return sessions.map((session) => {
    const rungIds = new Set(
      (plan?.items ?? []).filter((item) => item.session === session).map((item) => item.rungId),
    );
    const kept = library.filter(
      (ladder) =>
        !asked.has(ladder.id) && ladder.rungs.some((rung) => rungIds.has(rung.id) && isStrength(rung.family)),
    );
    return {
      session,
      kept: kept.map(({ name }) => name),
      room: Math.max(0, MOST_STRENGTH_A_SESSION - kept.length),
    };
  });
}
