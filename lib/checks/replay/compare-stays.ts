import { daysBetween } from '#lib/domain/local-date.ts';
import type { Stay } from './replay-reasons.ts';

/** What other numbers would have made of one stay of a reason. `days`: later (over 0) or earlier than it came. */
export type StayChange =
  | { what: 'came'; stay: Stay }
  | { what: 'gone'; stay: Stay }
  | { what: 'moved'; stay: Stay; was: Stay; days: number }
  | { what: 'weighs-differently'; stay: Stay; was: Stay };

/** Two stays this far apart are one that moved; farther, one went and another came. */
const SAME_WITHIN_DAYS = 28;

/**
 * The stays on the board under two sets of numbers, set against each other: of one kind and subject the nearest two are
 * a pair. What is the same on both sides is left out. In the order of dates. Pure.
 */
export function compareStays(before: readonly Stay[], after: readonly Stay[]): StayChange[] {
  const changes: StayChange[] = [];
  const left = new Set(before.filter(isOnBoard));
  for (const stay of after.filter(isOnBoard)) {
    const was = nearest(stay, left);
    if (!was) {
      changes.push({ what: 'came', stay });
      continue;
    }
    left.delete(was);
    const days = daysBetween(dayOf(was), dayOf(stay));
    if (days !== 0) changes.push({ what: 'moved', stay, was, days });
    else if (stay.tier !== was.tier || stay.level !== was.level)
      changes.push({ what: 'weighs-differently', stay, was });
  }
  for (const stay of left) changes.push({ what: 'gone', stay });
  return changes.sort(
    (a, b) => compare(dayOf(a.stay), dayOf(b.stay)) || compare(keyOf(a.stay), keyOf(b.stay)),
  );
}

function isOnBoard(stay: Stay): boolean {
  return stay.onBoard !== null;
}

function nearest(stay: Stay, among: ReadonlySet<Stay>): Stay | undefined {
  let found: Stay | undefined;
  let least = SAME_WITHIN_DAYS + 1;
  for (const one of among) {
    if (keyOf(one) !== keyOf(stay)) continue;
    const apart = Math.abs(daysBetween(dayOf(one), dayOf(stay)));
    if (apart >= least) continue;
    least = apart;
    found = one;
  }
  return found;
}

function dayOf(stay: Stay): string {
  return stay.onBoard ?? stay.from;
}

function keyOf(stay: Stay): string {
  return `${stay.kind} ${stay.key}`;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
