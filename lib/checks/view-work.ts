import { oncePerView } from './once-per-view.ts';
import { type RungWork, type Work, workOf } from './rung-work.ts';
import type { ClientView } from './types.ts';

/** Everything trained, oldest first. */
export const viewWork: (view: ClientView) => Work = oncePerView((view) => {
  const { earlier } = view;
  const newWork = workOf(view.days, clientOf(view), earlier?.days.length);
  if (!earlier) return newWork;
  const before = viewWork(earlier);
  return {
    byRung: before.byRung.concat(newWork.byRung),
    alike: before.alike.concat(newWork.alike),
  };
});

function clientOf({ rungs, history }: ClientView) {
  return { rungs, bodyMassKg: history.client.bodyMassKg };
}

/** The same by rung, oldest first. */
export const workByRung: (view: ClientView) => ReadonlyMap<string, readonly RungWork[]> = oncePerView(
  (view) => {
    const byRung = new Map<string, RungWork[]>();
    for (const work of viewWork(view).byRung) {
      const there = byRung.get(work.rung.id);
      if (there) there.push(work);
      else byRung.set(work.rung.id, [work]);
    }
    return byRung;
  },
);
