import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { type GoalRow, listOpenGoals, listSkills, type SkillRow } from '#lib/db/goals.ts';
import { type LibraryRung, listPlannableRungs, listPlans, type PlanRow } from '#lib/db/plans.ts';
import { localDateOf } from '#lib/domain/local-date.ts';

export type PlanForm = {
  clientId: string;
  clientName: string;
  today: string;
  versions: PlanRow[];
  rungs: LibraryRung[];
  skills: SkillRow[];
  goals: GoalRow[];
};

/** What the plan form needs; undefined: no such client here. */
export function loadPlanForm(actor: Actor, clientId: string, now: Date): Promise<PlanForm | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findClient(tx, clientId);
    if (!client) return undefined;
    return {
      clientId: client.id,
      clientName: client.name,
      today: localDateOf(now, client.zone),
      versions: await listPlans(tx, client.id),
      rungs: await listPlannableRungs(tx),
      skills: await listSkills(tx),
      goals: await listOpenGoals(tx, client.id),
    };
  });
}
