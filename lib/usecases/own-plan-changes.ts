import type { TeamPg } from '#lib/db/client.ts';
import { findRungs, listPlans } from '#lib/db/plans.ts';
import { drillDifference } from '#lib/views/plan-difference.ts';

/** One version of the plan as the client reads it: since when, by whom, and what became different in training. */
export type PlanChange = { version: number; from: string; by: string | null; notes: string; lines: string[] };

/** How many versions back (own choice). */
const SHOWN = 4;

/** What the coach changed in the plan, newest first; versions that have not begun are left out. */
export async function ownPlanChanges(tx: TeamPg, clientId: string, date: string): Promise<PlanChange[]> {
  const begun = (await listPlans(tx, clientId)).filter((plan) => plan.from <= date);
  const shown = begun.slice(0, SHOWN);
  const ids = begun.slice(0, SHOWN + 1).flatMap((plan) => plan.items.flatMap(rungIdsOf));
  const rungs = await findRungs(tx, [...new Set(ids)]);
  return shown.map((plan, at) => {
    const before = begun[at + 1];
    const lines = before ? drillDifference(before, plan, rungs) : [];
    return { version: plan.version, from: plan.from, by: plan.by, notes: plan.notes, lines };
  });
}

function rungIdsOf({
  rungId,
  noKitRungId,
}: {
  rungId: string;
  noKitRungId?: string | null | undefined;
}): string[] {
  return noKitRungId ? [rungId, noKitRungId] : [rungId];
}
