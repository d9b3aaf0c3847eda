import { oncePerCheckIns, oncePerView } from './once-per-view.ts';
import { type RungLoads, type RungWork, type Work, workOf } from './rung-work.ts';
import type { ClientView } from './types.ts';

/** How many of each the view before has: those after them are new. */
type ViewWork = Work & { before: { byRung: number; alike: number } };

/** Everything trained, oldest first. */
export const viewWork: (view: ClientView) => ViewWork = oncePerView((view) => {
  const { earlier } = view;
  const newWork = workOf(view.days, clientOf(view), earlier?.days.length, loadsKnown(view));
  if (!earlier) return { ...newWork, before: { byRung: 0, alike: 0 } };
  const { byRung, alike } = viewWork(earlier);
  const before = { byRung: byRung.length, alike: alike.length };
  if (newWork.byRung.length === 0) return { byRung, alike, before };
  return { byRung: byRung.concat(newWork.byRung), alike: alike.concat(newWork.alike), before };
});

/** One for all views of a client: filled as rungs are met. */
const loadsKnown = oncePerView((_, before?: RungLoads): RungLoads => before ?? new Map());

function clientOf({ rungs, history }: ClientView) {
  return { rungs, bodyMassKg: history.client.bodyMassKg };
}

type ByRung = ReadonlyMap<string, readonly RungWork[]>;

/** The same by rung, oldest first. */
export const workByRung: (view: ClientView) => ByRung = oncePerCheckIns(
  (view) => groupByRung(viewWork(view).byRung),
  (view, before) => {
    const byRung = new Map(before);
    for (const [rungId, works] of newByRung(view))
      byRung.set(rungId, [...(before.get(rungId) ?? []), ...works]);
    return byRung;
  },
);

/** What the view before has not, by rung. */
export const newByRung: (view: ClientView) => ByRung = oncePerView((view) => {
  const { byRung, before } = viewWork(view);
  return groupByRung(byRung.slice(before.byRung));
});

function groupByRung(works: readonly RungWork[]): Map<string, RungWork[]> {
  const byRung = new Map<string, RungWork[]>();
  for (const work of works) {
    const there = byRung.get(work.rung.id);
    if (there) there.push(work);
    else byRung.set(work.rung.id, [work]);
  }
  return byRung;
}

/** Where the work from a day on begins in a list that is in order of days. */
export function firstFrom(works: readonly { at: number }[], day: number): number {
  let [low, high] = [0, works.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((works[middle]?.at ?? day) < day) low = middle + 1;
    else high = middle;
  }
  return low;
}
