import type { Side, Support } from '#lib/domain/vocabulary.ts';
import { isAtHand, openingsUpTo } from '../gaps/asks-of-skill.ts';
import type { GapLadder, GapRung } from '../gaps/gap-types.ts';
import { sidesOf } from './same-drill.ts';
import { answerFor, reachOf } from './start-reach.ts';
import type { StartAnswer, StartFacts } from './start-types.ts';

export type Opened = { open: true; on: Support | null } | { open: false; words: string };

/**
 * Whether everything that must stand before a rung, and before the rungs below it, does stand: by a pass mark met in
 * a start test on it or on a harder rung, or by standing above it in training. What is not known does not stand. Some
 * openings are made up for by a support at hand: then the rung is open on that support only.
 */
export function openedBy(
  place: { ladder: GapLadder; rung: GapRung },
  answers: readonly StartAnswer[],
  facts: StartFacts,
): Opened {
  let on: Support | null = null;
  for (const opening of openingsUpTo(place)) {
    if (opening.under18CoachTick && facts.under18 && !facts.under18Allowed)
      return { open: false, words: 'under 18 it opens only when the coach allows it' };
    if (opening.needsAll.every((any) => any.some((key) => stands(key, answers, facts)))) continue;
    const support = opening.orOnSupports.find((one) => isAtHand(one, facts.kit));
    if (!support) return { open: false, words: opening.words.replace(/\.$/, '') };
    on ??= support;
  }
  return { open: true, on };
}

/** On every side that is asked of the rung. */
function stands(key: string, answers: readonly StartAnswer[], facts: StartFacts): boolean {
  for (const ladder of facts.library) {
    const rung = ladder.rungs.find((one) => one.key === key);
    if (rung) return sidesOf(rung).every((side) => standsOn({ ladder, rung, side }, answers, facts));
  }
  return false;
}

function standsOn(
  { ladder, rung, side }: { ladder: GapLadder; rung: GapRung; side: Side },
  answers: readonly StartAnswer[],
  facts: StartFacts,
): boolean {
  const trained = facts.standing.some(
    (one) =>
      one.ladderId === ladder.id &&
      (one.side === side || one.side === 'both' || side === 'both') &&
      (ladder.rungs.find(({ id }) => id === one.rungId)?.position ?? -1) > rung.position,
  );
  if (trained) return true;
  return ladder.rungs.some(
    (one) =>
      one.position >= rung.position &&
      sidesOf(one).every(
        (each) =>
          (side !== 'both' && each !== 'both' && each !== side) ||
          reachOf(one, answerFor(answers, ladder, one, each)) === 'met',
      ),
  );
}
