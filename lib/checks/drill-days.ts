import type { HistoryRung } from '#lib/domain/history.ts';
import type { Family, Tissue } from '#lib/domain/vocabulary.ts';
import { isDone, supportOf } from './exposure.ts';
import { oncePerCheckIns } from './once-per-view.ts';
import type { RungWork } from './rung-work.ts';
import { isOnSoftGround } from './soft-ground.ts';
import { weightsOnSupport } from './supports.ts';
import type { ClientView } from './types.ts';
import { firstFrom, viewWork } from './view-work.ts';

/** One training day of one drill (a ladder: two rungs of it on a day are one drill). */
export type DrillDay = {
  index: number;
  /** Sets done, of the side that did more; a set of both sides counts once. */
  sets: number;
  easy: boolean;
};
export type Drill = { ladderId: string; name: string; family: Family; days: DrillDay[] };

/** Every drill with its training days, oldest first; drills in the order of their ids. Ranges are no drills: no load. */
export const drillsOf: (view: ClientView) => readonly Drill[] = oncePerCheckIns(
  (view) => sorted(drillsIn(view, viewWork(view).byRung)),
  (view, before) => {
    const { byRung, before: known } = viewWork(view);
    const drills = new Map(before.map((drill) => [drill.ladderId, drill]));
    for (const drill of drillsIn(view, byRung.slice(known.byRung))) {
      const there = drills.get(drill.ladderId);
      drills.set(drill.ladderId, there ? { ...there, days: there.days.concat(drill.days) } : drill);
    }
    return sorted([...drills.values()]);
  },
);

function sorted(drills: Drill[]): Drill[] {
  return drills.sort((a, b) => (a.ladderId < b.ladderId ? -1 : 1));
}

function drillsIn(view: ClientView, works: readonly RungWork[]): Drill[] {
  const drills = new Map<string, { drill: Drill; day: Counted | undefined }>();
  for (const { rung, at, left, right } of works) {
    if ((left === 0 && right === 0) || rung.measure === 'range-up' || rung.measure === 'range-down') continue;
    let there = drills.get(rung.ladderId);
    if (!there) {
      there = { drill: newDrill(rung), day: undefined };
      drills.set(rung.ladderId, there);
    }
    if (there.day?.index !== at) {
      there.day = { index: at, sets: 0, easy: view.days[at]?.easy === true, left: 0, right: 0 };
      there.drill.days.push(there.day);
    }
    const { day } = there;
    day.left += left;
    day.right += right;
    day.sets = Math.max(day.left, day.right);
  }
  return [...drills.values()].map(({ drill }) => drill);
}

type Counted = DrillDay & { left: number; right: number };

function newDrill({ ladderId, ladder, family }: HistoryRung): Drill {
  return { ladderId, name: ladder, family, days: [] };
}

/** Largest weight (0-1) of a done set of a drill on a tissue, on one of its days. */
export function weightOn(view: ClientView, { ladderId }: Drill, { index }: DrillDay, tissue: Tissue): number {
  let largest = 0;
  const { byRung } = viewWork(view);
  for (const { rung, sets, checkIn } of byRung.slice(
    firstFrom(byRung, index),
    firstFrom(byRung, index + 1),
  )) {
    if (rung.ladderId !== ladderId) continue;
    const soft = isOnSoftGround(checkIn);
    for (const set of sets.filter(isDone)) {
      largest = Math.max(largest, weightsOnSupport(rung.weights, supportOf(set, soft))[tissue] ?? 0);
    }
  }
  return largest;
}
