import type { ClientView } from './types.ts';

/** A run of days without training that ended with a training day, as indexes of the view. */
export type Break = { from: number; returned: number; days: number; off: number };

/**
 * The newest break that ended within the last days: so many days off, or silence longer than the longest ordinary gap
 * of this client before it. `undefined` when there was none, or nobody has come back yet.
 */
export function newestBreak(
  view: ClientView,
  { atLeast, endedWithin }: { atLeast: number; endedWithin: number },
): Break | undefined {
  const oldest = Math.max(1, view.days.length - endedWithin);
  for (let index = view.days.length - 1; index >= oldest; index -= 1) {
    if (view.days[index]?.state !== 'trained' || view.days[index - 1]?.state === 'trained') continue;
    const found = breakBefore(view, index, atLeast);
    if (found) return found;
  }
  return undefined;
}

function breakBefore(view: ClientView, returned: number, atLeast: number): Break | undefined {
  let from = returned;
  let off = 0;
  let silent = true;
  while (from > 0 && view.days[from - 1]?.state !== 'trained') {
    from -= 1;
    if (view.days[from]?.state === 'off') off += 1;
    if ((view.days[from]?.checkIns.length ?? 0) > 0) silent = false;
  }
  const days = returned - from;
  if (from === 0 || days < atLeast) return undefined;
  const said = off >= atLeast;
  return said || (silent && days > longestGapBefore(view, from)) ? { from, returned, days, off } : undefined;
}

/** Most days in a row without training and without a day off, before an index. */
function longestGapBefore(view: ClientView, end: number): number {
  let longest = 0;
  let here = 0;
  let started = false;
  for (let index = 0; index < end; index += 1) {
    const state = view.days[index]?.state;
    if (state === 'trained') {
      if (started) longest = Math.max(longest, here);
      started = true;
      here = 0;
    } else if (state !== 'off') here += 1;
  }
  return longest;
}
