import { asksOfSkill } from '../gaps/asks-of-skill.ts';
import type { Assessment, SideSeen } from '../gaps/gap-types.ts';
import type { Aim } from './propose-tests.ts';
import { sidesOf } from './same-drill.ts';
import { answerFor, reachOf } from './start-reach.ts';
import type { StartAnswer, StartFacts } from './start-types.ts';

const SESSIONS = ['A', 'B'];

/**
 * What start tests say of the parts of a skill, as an assessment for the fewest drills: of each part and side the hardest
 * rung that was answered, with its sets, the least of them, clean or not, and pain. Not answered: nothing is known.
 * Undefined when the aim asks no part.
 */
export function assessmentOfTests(
  aim: Aim,
  answers: readonly StartAnswer[],
  facts: Pick<StartFacts, 'library' | 'kit' | 'under18Allowed'>,
): Assessment | undefined {
  const { library, kit, under18Allowed } = facts;
  const asks = asksOfSkill(library, { ...aim, kit });
  if (asks.length === 0) return undefined;
  return {
    ...aim,
    kit,
    sessions: SESSIONS,
    under18Allowed,
    parts: asks.map(({ ladder, rung }) => ({
      ladderId: ladder.id,
      askedRungId: rung.id,
      sides: sidesOf(rung).map((side): SideSeen => {
        const nothing = {
          side,
          film: 'not-seen',
          rungId: null,
          sets: null,
          value: null,
          clean: null,
          pain: null,
        } as const;
        const upTo = ladder.rungs.filter(({ position }) => position <= rung.position).reverse();
        const shown = upTo
          .map((one) => ({ rung: one, answer: answerFor(answers, ladder, one, side) }))
          .filter(({ answer }) => answer !== undefined);
        const good = shown.find((one) => ['met', 'in-reach'].includes(reachOf(one.rung, one.answer)));
        const [hardest] = shown;
        const answer = (good ?? hardest)?.answer;
        if (!answer) return nothing;
        if (answer.outcome !== 'done') return { ...nothing, film: 'drops', pain: answer.pain };
        const { values, tried } = answer;
        return {
          ...nothing,
          rungId: (good ?? shown.at(-1))?.rung.id ?? null,
          sets: tried ?? values.length,
          value: values.length === 0 ? null : Math.min(...values),
          clean: answer.clean,
          pain: answer.pain,
        };
      }),
    })),
  };
}
