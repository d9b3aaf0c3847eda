import { oncePerView } from './once-per-view.ts';
import { type RungWork, type Work, workOf } from './rung-work.ts';
import type { ClientView } from './types.ts';

/** Everything trained, oldest first. */
export const viewWork: (view: ClientView) => Work = oncePerView((view) =>
  workOf(view.days, { rungs: view.rungs, bodyMassKg: view.history.client.bodyMassKg }),
);

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
