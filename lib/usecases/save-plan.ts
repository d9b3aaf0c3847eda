import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { listSkills, setGoals } from '#lib/db/goals.ts';
import { markDraftUsed } from '#lib/db/plan-drafts.ts';
import {
  findRungs,
  insertPlan,
  type LibraryRung,
  listPlacementsOn,
  lockPlanVersion,
  type StandingPlacement,
  upsertPlacement,
} from '#lib/db/plans.ts';
import { AppError } from '#lib/errors.ts';
import type { PlanInput, PlanItemInput, PlanSessionInput } from '#lib/schemas/plan.ts';
import { skillsInFocus } from '#lib/views/skills-in-focus.ts';
import { planLinesBySide } from './plan-lines-by-side.ts';

export type PlanSaved = { version: number };
export type PlanContext = { actor: Actor & { memberId: string }; clientId: string; now: Date };

/**
 * Keeps a new version of the plan with the placements and goals it means, in one transaction. Of two people who
 * changed the same version, the second is told and keeps what was typed.
 */
export async function savePlan(
  actor: Actor,
  input: { clientId: string; plan: PlanInput },
  now: Date,
): Promise<PlanSaved> {
  const { memberId } = actor;
  if (!memberId) throw new AppError('forbidden', 'Only a coach changes plans.');
  const context = { actor: { ...actor, memberId }, clientId: input.clientId, now };
  return withTeamPg(actor.scope, async (tx) => {
    const newest = await lockPlanVersion(tx, input.clientId);
    if (newest === undefined) throw new AppError('not-found', 'This client is not here.');
    if (newest !== input.plan.baseVersion) throw planConflict(newest, input.plan.baseVersion);
    return savePlanIn(tx, context, { plan: input.plan, version: newest + 1 });
  });
}

/** The same inside a transaction that does more: `lockPlanVersion` was called in it, `version` is the next one. */
export async function savePlanIn(
  tx: TeamPg,
  context: PlanContext,
  made: { plan: PlanInput; version: number },
): Promise<PlanSaved> {
  const { plan, version } = made;
  const rungs = await findRungs(
    tx,
    plan.items.flatMap((item) => [item.rungId, ...(item.noKitRungId ? [item.noKitRungId] : [])]),
  );
  const items = planLinesBySide(plan.items, rungs);
  await insertPlan(tx, {
    ...plan,
    items,
    sessions: allSessions(plan),
    version,
    clientId: context.clientId,
    byId: context.actor.memberId,
    skillsInFocus: await focusOf(tx, plan, { items, rungs }),
    now: context.now,
  });
  await place(tx, context, { placements: placementsOf(items, rungs), from: plan.from, version });
  if (plan.goals) await setGoals(tx, { clientId: context.clientId, from: plan.from, goals: plan.goals });
  await closeDraft(tx, context, { draftId: plan.draftId, version });
  await insertAudit(tx, context.actor, {
    action: 'plan-saved',
    clientId: context.clientId,
    objectId: String(version),
    fields: [],
  });
  return { version };
}

/** Sessions as they were ordered, and those that only lines name behind them. */
function allSessions(plan: PlanInput): PlanSessionInput[] {
  const named = plan.sessions.map((session) => session.label);
  const others = [...new Set(plan.items.map((item) => item.session))].filter((one) => !named.includes(one));
  const bare = { restSeconds: null, warmUp: '', warmUpMinutes: 0, minutes: null };
  return [...plan.sessions, ...others.map((label) => ({ label, ...bare }))];
}

/** The skills the coach names, or those the drills work on. */
async function focusOf(
  tx: TeamPg,
  plan: PlanInput,
  { items, rungs }: { items: PlanItemInput[]; rungs: Map<string, LibraryRung> },
): Promise<string[]> {
  if (!plan.goals) return skillsInFocus(items.flatMap((item) => rungs.get(item.rungId) ?? []));
  const skills = new Map((await listSkills(tx)).map((skill) => [skill.id, skill.name]));
  return plan.goals.map(({ skillId }, index) => {
    const name = skills.get(skillId);
    if (name !== undefined) return name;
    const message = 'is not a skill of your ladders: choose one from the list';
    throw new AppError('invalid', `goals.${index}.skillId: ${message}`, {
      fields: { [`goals.${index}.skillId`]: message },
    });
  });
}

async function place(
  tx: TeamPg,
  context: PlanContext,
  { placements, from, version }: { placements: StandingPlacement[]; from: string; version: number },
): Promise<void> {
  const standing = await listPlacementsOn(tx, context.clientId, from);
  for (const placement of placements) {
    const same = standing.some(
      (one) =>
        one.ladderId === placement.ladderId && one.side === placement.side && one.rungId === placement.rungId,
    );
    if (same) continue;
    const { clientId } = context;
    await upsertPlacement(tx, { ...placement, clientId, from, why: `plan version ${version}` });
  }
}

async function closeDraft(
  tx: TeamPg,
  { clientId, now }: PlanContext,
  { draftId, version }: { draftId: string | null; version: number },
): Promise<void> {
  if (draftId === null) return;
  if (await markDraftUsed(tx, { clientId, draftId, version, now })) return;
  const message = 'is no draft of this client: open the plan without it';
  throw new AppError('invalid', `draftId: ${message}`, { fields: { draftId: message } });
}

/** The hardest planned rung of each ladder and side is where the client stands. */
function placementsOf(items: PlanItemInput[], rungs: Map<string, LibraryRung>): StandingPlacement[] {
  const hardest = new Map<string, { placement: StandingPlacement; position: number }>();
  for (const item of items) {
    const rung = rungs.get(item.rungId);
    if (!rung) continue;
    const key = `${rung.ladderId} ${item.side}`;
    if ((hardest.get(key)?.position ?? -1) >= rung.position) continue;
    hardest.set(key, {
      placement: { ladderId: rung.ladderId, side: item.side, rungId: rung.id },
      position: rung.position,
    });
  }
  return [...hardest.values()].map((one) => one.placement);
}

/** Somebody saved a version meanwhile. */
export function planConflict(newest: number, base: number): AppError {
  const had = base === 0 ? 'no plan' : `version ${base}`;
  return new AppError(
    'conflict',
    `Version ${newest} was saved while you had ${had} open. Nothing was saved; what you typed is still here. Open the new version in another tab, take over what you want to keep, then save again.`,
    { fields: { baseVersion: String(newest) } },
  );
}
