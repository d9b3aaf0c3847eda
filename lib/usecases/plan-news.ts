import type { TeamPg } from '#lib/db/client.ts';
import { findComingPlan, findLastTrainedVersion, listPlanItems } from '#lib/db/phone-plan.ts';
import { findRungs } from '#lib/db/plans.ts';
import { drillDifference } from '#lib/views/plan-difference.ts';

export type PlanNews = {
  /** What is different from the version the client trained by the last time, in plain lines. */
  changes: string[];
  /** First day of a newer plan that has not begun; null: there is none. */
  coming: string | null;
};

/** What is new about the plan since the client trained the last time. */
export async function planNews(
  tx: TeamPg,
  { clientId, date, version }: { clientId: string; date: string; version: number | null },
): Promise<PlanNews> {
  const coming = (await findComingPlan(tx, clientId, date)) ?? null;
  const trained = version === null ? undefined : await findLastTrainedVersion(tx, clientId);
  if (version === null || trained === undefined || trained === version) return { changes: [], coming };
  const before = await listPlanItems(tx, clientId, trained);
  const after = await listPlanItems(tx, clientId, version);
  const ids = [...before, ...after].flatMap((item) => [
    item.rungId,
    ...(item.noKitRungId ? [item.noKitRungId] : []),
  ]);
  const rungs = await findRungs(tx, ids);
  return { changes: drillDifference({ items: before }, { items: after }, rungs), coming };
}
