import { oncePerView } from './once-per-view.ts';
import { type RungWork, workOf } from './rung-work.ts';
import type { ClientView } from './types.ts';

/** Everything trained, oldest first: one entry for each rung of a check-in. */
export const viewWork: (view: ClientView) => readonly RungWork[] = oncePerView((view) =>
  workOf(
    view.days.flatMap(({ checkIns }, at) => checkIns.map((checkIn) => ({ at, checkIn }))),
    { rungs: view.rungs, bodyMassKg: view.history.client.bodyMassKg },
  ),
);
