import type { ClientView } from '#lib/checks/types.ts';
import { GAP_KIT } from '#lib/domain/gap-kit.ts';
import { PLAN_SESSIONS } from '#lib/domain/plan-sessions.ts';
import { asksOfSkill } from './asks-of-skill.ts';
import type { GapContext } from './gap-context.ts';
import type { Ask, Assessment } from './gap-types.ts';
import { prefillOf } from './prefill.ts';
import { laddersOfSkill, usualAim } from './usual-aim.ts';

type Facts = { view: ClientView; context: GapContext };
type Wanted = {
  skillId?: string | undefined;
  aimRungId?: string | undefined;
  kit?: readonly string[] | undefined;
};

/**
 * An assessment to begin with, filled in from the history: the skill wanted, else the first in focus of the plan, else
 * the first of the library; kit as last time, else what the plan's drills ask for; the plan's sessions. Undefined when
 * no ladder is in use.
 */
export function firstAssessment(
  { view, context }: Facts,
  wanted: Wanted,
): { assessment: Assessment; asks: Ask[] } | undefined {
  const { library, plan, numbers } = context;
  const inFocus = library.find((ladder) => plan?.skillsInFocus.includes(ladder.skill));
  const has = (skillId: string | undefined) =>
    skillId !== undefined && laddersOfSkill(library, skillId).length > 0 ? skillId : undefined;
  const skillId =
    has(wanted.skillId) ?? inFocus?.skillId ?? library.find(({ family }) => family !== 'mobility')?.skillId;
  if (!skillId) return undefined;
  const rungs = laddersOfSkill(library, skillId).flatMap((ladder) => ladder.rungs);
  const aim = rungs.find((rung) => rung.id === wanted.aimRungId) ?? usualAim(library, skillId);
  if (!aim) return undefined;
  const kit = wanted.kit ?? kitOfPlan(context);
  const asks = asksOfSkill(library, { skillId, aimRungId: aim.id, kit });
  const sessions = PLAN_SESSIONS.filter((name) => plan?.items.some((item) => item.session === name));
  return {
    asks,
    assessment: {
      skillId,
      aimRungId: aim.id,
      kit,
      sessions: sessions.length > 0 ? sessions : ['A'],
      under18Allowed: false,
      parts: asks.map((ask) => ({
        ladderId: ask.ladder.id,
        askedRungId: ask.rung.id,
        sides: prefillOf(ask, view, numbers),
      })),
    },
  };
}

function kitOfPlan({ plan, library }: GapContext): string[] {
  const planned = new Set(plan?.items.map((item) => item.rungId));
  const named = library
    .flatMap(({ rungs }) => rungs.filter((rung) => planned.has(rung.id)))
    .flatMap(({ equipment }) => equipment);
  return GAP_KIT.filter((one) => named.includes(one));
}
