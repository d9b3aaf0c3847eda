import type { HistoryRung } from '#lib/domain/history.ts';
import type { Family, Tissue } from '#lib/domain/vocabulary.ts';
import { oncePerView } from './once-per-view.ts';
import type { RungWork } from './rung-work.ts';
import { weightsOnSupport } from './supports.ts';
import type { ClientView } from './types.ts';
import { viewWork } from './view-work.ts';

/** One training day of one drill (a ladder: two rungs of it on a day are one drill). */
export type DrillDay = {
  index: number;
  /** Sets done, of the side that did more; a set of both sides counts once. */
  sets: number;
  easy: boolean;
  work: readonly RungWork[];
};
export type Drill = { ladderId: string; name: string; family: Family; days: DrillDay[] };

/** Every drill with its training days, oldest first; drills in the order of their ids. Ranges are no drills: no load. */
export const drillsOf: (view: ClientView) => readonly Drill[] = oncePerView((view) => {
  const drills = new Map<string, { drill: Drill; day: Counted | undefined }>();
  for (const work of viewWork(view)) {
    const { rung, at, left, right } = work;
    if ((left === 0 && right === 0) || rung.measure === 'range-up' || rung.measure === 'range-down') continue;
    let there = drills.get(rung.ladderId);
    if (!there) {
      there = { drill: newDrill(rung), day: undefined };
      drills.set(rung.ladderId, there);
    }
    if (there.day?.index !== at) {
      there.day = { index: at, sets: 0, easy: view.days[at]?.easy === true, work: [], left: 0, right: 0 };
      there.drill.days.push(there.day);
    }
    const { day } = there;
    day.left += left;
    day.right += right;
    day.sets = Math.max(day.left, day.right);
    day.work.push(work);
  }
  return [...drills.values()].map(({ drill }) => drill).sort((a, b) => (a.ladderId < b.ladderId ? -1 : 1));
});

type Counted = DrillDay & { work: RungWork[]; left: number; right: number };

function newDrill({ ladderId, ladder, family }: HistoryRung): Drill {
  return { ladderId, name: ladder, family, days: [] };
}

/** Largest weight (0-1) of a done set of the day on a tissue. */
export function weightOn({ work }: DrillDay, tissue: Tissue): number {
  let largest = 0;
  for (const { rung, alike } of work) {
    for (const { done, support } of alike) {
      if (done > 0) largest = Math.max(largest, weightsOnSupport(rung.weights, support)[tissue] ?? 0);
    }
  }
  return largest;
}
