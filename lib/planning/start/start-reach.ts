import type { Side } from '#lib/domain/vocabulary.ts';
import { SORE_FROM } from '../gaps/gap-numbers.ts';
import type { GapLadder, GapRung } from '../gaps/gap-types.ts';
import { isRange, isSameDrill } from './same-drill.ts';
import { IN_REACH_SHARE, TEST_SETS } from './start-numbers.ts';
import type { StartAnswer } from './start-types.ts';

/**
 * How far a start test reaches on a rung. `met`: its pass mark, clean, in the sets that were asked (up to three).
 * `in-reach`: three quarters of it, clean. `short`: less, or not clean. `unknown`: nothing was said.
 */
export type Reach = 'met' | 'in-reach' | 'short' | 'cannot' | 'hurts' | 'unknown';

/** The answer that speaks of a rung on a side: of the same drill, on that side or on both. */
export function answerFor(
  answers: readonly StartAnswer[],
  ladder: GapLadder,
  rung: GapRung,
  side: Side,
): StartAnswer | undefined {
  return answers.find((answer) => {
    if (answer.ladderId !== ladder.id) return false;
    if (answer.side !== side && answer.side !== 'both' && side !== 'both') return false;
    const tested = ladder.rungs.find((one) => one.id === answer.rungId);
    return tested !== undefined && isSameDrill(tested, rung);
  });
}

/** How far an answer reaches on a rung; pain of 3 and more counts as "hurts" whatever was done. */
export function reachOf(rung: GapRung, answer: StartAnswer | undefined): Reach {
  if (!answer) return 'unknown';
  if (answer.outcome === 'hurts' || (answer.pain ?? 0) >= SORE_FROM) return 'hurts';
  if (answer.outcome === 'cannot') return 'cannot';
  if (answer.clean === false) return 'short';
  const share = shareOfTest(rung, answer);
  if (share >= 1) return 'met';
  return share >= IN_REACH_SHARE && !isRange(rung) ? 'in-reach' : 'short';
}

/**
 * Share (0-1) of a rung's pass mark that an answer comes to. Sets: the best of as many as were asked, each up to the
 * target; tries: good ones per try against those asked; ranges: 1 when reached, else 0. Without values 0.
 */
export function shareOfTest(rung: GapRung, { values, tried }: StartAnswer): number {
  const { pass, measure } = rung;
  const [first] = values;
  if (first === undefined) return 0;
  if (measure === 'range-up') return first >= pass.target ? 1 : 0;
  if (measure === 'range-down') return first <= pass.target ? 1 : 0;
  if (measure === 'made-tried') {
    const tries = tried ?? pass.tries ?? pass.target;
    return tries <= 0 ? 0 : Math.min(1, (first * (pass.tries ?? pass.target)) / (tries * pass.target));
  }
  const sets = Math.min(pass.sets, TEST_SETS);
  const best = [...values].sort((a, b) => b - a).slice(0, sets);
  return best.reduce((sum, value) => sum + Math.min(value, pass.target), 0) / (sets * pass.target);
}
