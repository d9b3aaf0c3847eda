import { oncePerView } from './once-per-view.ts';
import type { ClientView } from './types.ts';

/**
 * Index of the day on which a client counts as new: the first training day after 84 or more days off or without a word,
 * the newest of them; 0 for whoever never was away that long. A day told as rest in between ends the silence, not the
 * absence. The history before stays, but first weeks run from here. The 84 days: common practice, no source.
 */
export function newStartAt(view: ClientView): number {
  return awayOf(view).start;
}

const awayOf = oncePerView(({ days, limits, joinedOn }) => {
  const first = days[0]?.date ?? '';
  // Whoever joined before the first day that is looked at may have told something before it.
  let wasHere = joinedOn !== undefined && joinedOn < first;
  let start = 0;
  let silent = 0;
  let isAway = false;
  let isAwayAsNew = false;
  days.forEach(({ state, checkIns }, index) => {
    silent = checkIns.length > 0 ? 0 : silent + 1;
    if (silent >= limits['day.newStartDays']) {
      isAway = true;
      isAwayAsNew = wasHere;
    }
    if (checkIns.length > 0) wasHere = true;
    if (state !== 'trained') return;
    if (isAway) start = index;
    isAway = false;
    isAwayAsNew = false;
  });
  return { start, isAwayAsNew };
});

/** Days since the client began, or began again as new; the first day and tonight's are counted. */
export function daysHere(view: ClientView): number {
  return view.days.length - newStartAt(view);
}

/** Was here, then away for 84 or more days, and has not trained since: starts as new with the next training. */
export function isAwayAsNew(view: ClientView): boolean {
  return awayOf(view).isAwayAsNew;
}
