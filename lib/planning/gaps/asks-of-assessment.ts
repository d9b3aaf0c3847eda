import { asksOfSkill } from './asks-of-skill.ts';
import type { Ask, Assessment, GapLadder } from './gap-types.ts';

/** What the skill asks, with the rungs the coach chose to ask instead. Parts no longer in the ladders are left out. */
export function asksOfAssessment(library: readonly GapLadder[], assessment: Assessment): Ask[] {
  const chosen = new Map(assessment.parts.map((part) => [part.ladderId, part.askedRungId]));
  return asksOfSkill(library, assessment).flatMap((ask) => {
    if (!chosen.has(ask.ladder.id)) return [];
    const rung = ask.ladder.rungs.find(({ id }) => id === chosen.get(ask.ladder.id));
    return [!rung || rung.id === ask.rung.id ? ask : { ...ask, rung, why: 'Chosen by the coach.' }];
  });
}
