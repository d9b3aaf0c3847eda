import { oncePerView } from './once-per-view.ts';
import type { ClientView } from './types.ts';

/**
 * Index of the day on which a client counts as new: the first training day after 84 or more days off or without a word,
 * the newest of them; 0 for whoever never was away that long. The history before stays, but first weeks run from here.
 * The 84 days: common practice, no source.
 */
export function newStartAt(view: ClientView): number {
  return started(view).at;
}

const started = oncePerView(({ days, limits }) => {
  let start = 0;
  let away = 0;
  days.forEach(({ state, checkIns }, index) => {
    if (state === 'trained') {
      if (away >= limits['day.newStartDays']) start = index;
      away = 0;
    } else away = checkIns.length > 0 ? 0 : away + 1;
  });
  return { at: start };
});

/** Days since the client began, or began again as new; the first day and tonight's are counted. */
export function daysHere(view: ClientView): number {
  return view.days.length - newStartAt(view);
}

/** Away for 84 or more days up to tonight, and not trained since: whoever comes back now starts as new. */
export function isAwayAsNew({ days, limits }: ClientView): boolean {
  let away = 0;
  for (let at = days.length - 1; at >= 0; at -= 1) {
    const day = days[at];
    if (!day || day.state === 'trained' || day.checkIns.length > 0) break;
    away += 1;
  }
  const known = days.some(({ checkIns }) => checkIns.length > 0);
  return known && away >= limits['day.newStartDays'];
}
