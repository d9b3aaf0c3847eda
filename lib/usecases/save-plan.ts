import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
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
import type { PlanInput, PlanItemInput } from '#lib/schemas/plan.ts';
import { planWarnings, skillsInFocus } from '#lib/views/plan-warnings.ts';

export type PlanSaved = { version: number; warnings: string[] };
type Context = { actor: Actor & { memberId: string }; clientId: string; now: Date };

/**
 * Keeps a new version of the plan with the placements it means, in one transaction. Of two people who changed
 * the same version, the second is told and keeps what was typed.
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
    if (newest !== input.plan.baseVersion) throw conflict(newest, input.plan.baseVersion);
    return write(tx, context, { plan: input.plan, version: newest + 1 });
  });
}

async function write(
  tx: TeamPg,
  context: Context,
  made: { plan: PlanInput; version: number },
): Promise<PlanSaved> {
  const { plan, version } = made;
  const rungs = await findRungs(
    tx,
    plan.items.map((item) => item.rungId),
  );
  const items = bySide(plan.items, rungs);
  const drills = items.flatMap((item) => {
    const rung = rungs.get(item.rungId);
    return rung
      ? [{ session: item.session, ladderId: rung.ladderId, skill: rung.skill, family: rung.family }]
      : [];
  });
  await insertPlan(tx, {
    ...plan,
    items,
    version,
    clientId: context.clientId,
    byId: context.actor.memberId,
    skillsInFocus: skillsInFocus(drills),
    now: context.now,
  });
  const standing = await listPlacementsOn(tx, context.clientId, plan.from);
  for (const placement of placementsOf(items, rungs)) {
    const same = standing.some(
      (one) =>
        one.ladderId === placement.ladderId && one.side === placement.side && one.rungId === placement.rungId,
    );
    if (!same) {
      await upsertPlacement(tx, {
        ...placement,
        clientId: context.clientId,
        from: plan.from,
        why: `plan version ${version}`,
      });
    }
  }
  await insertAudit(tx, context.actor, {
    action: 'plan-saved',
    clientId: context.clientId,
    objectId: String(version),
    fields: [],
  });
  return { version, warnings: planWarnings(drills) };
}

/** A rung done on each side is planned for left and right apart; others for both together. */
function bySide(items: PlanItemInput[], rungs: Map<string, LibraryRung>): PlanItemInput[] {
  const fields: Record<string, string> = {};
  const result = items.flatMap((item, index): PlanItemInput[] => {
    const rung = rungs.get(item.rungId);
    if (!rung) {
      fields[`items.${index}.rungId`] = 'is not a rung of your ladders: choose one from the list';
      return [];
    }
    if (!rung.eachSide && item.side !== 'both') {
      fields[`items.${index}.side`] = `"${rung.name}" is done with both sides together: choose both`;
      return [];
    }
    return rung.eachSide && item.side === 'both'
      ? [
          { ...item, side: 'left' },
          { ...item, side: 'right' },
        ]
      : [item];
  });
  const [first] = Object.entries(fields);
  if (first) throw new AppError('invalid', `${first[0]}: ${first[1]}`, { fields });
  return result;
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

function conflict(newest: number, base: number): AppError {
  const had = base === 0 ? 'no plan' : `version ${base}`;
  return new AppError(
    'conflict',
    `Version ${newest} was saved while you had ${had} open. Nothing was saved; what you typed is still here. Open the new version in another tab, take over what you want to keep, then save again.`,
    { fields: { baseVersion: String(newest) } },
  );
}
