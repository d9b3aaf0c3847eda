import type { HistoryRung } from '#lib/domain/history.ts';
import type { EditedPlan } from './edited-plan.ts';

/** A part of a skill that the plan works on, with the drills that do it, in the order of the plan. */
export type PartCovered = { skill: string; part: string; drills: string[] };

/** Parts covered by a plan and by which drills. Rungs that are not given are left out. */
export function partsCovered(plan: EditedPlan, rungs: ReadonlyMap<string, HistoryRung>): PartCovered[] {
  const parts = new Map<string, PartCovered>();
  for (const { rungId } of plan.items) {
    const rung = rungs.get(rungId);
    if (!rung) continue;
    const key = `${rung.skill}\n${rung.part}`;
    const there = parts.get(key) ?? { skill: rung.skill, part: rung.part, drills: [] };
    if (!there.drills.includes(rung.ladder)) there.drills.push(rung.ladder);
    parts.set(key, there);
  }
  return [...parts.values()];
}
