import type { CoverCandidate } from './cover-program.ts';

/**
 * Leaves out candidates that are never in the best answer: another one covers and serves all they do, needs no more
 * and comes before them in strain, change and order. Putting that one in their place never makes an answer worse.
 * `sorted`: in the order of their keys.
 */
export function undominated(sorted: readonly CoverCandidate[]): CoverCandidate[] {
  return sorted.filter(
    (one, at) => !sorted.some((other, before) => before !== at && comesFirst(other, one, before < at)),
  );
}

function comesFirst(other: CoverCandidate, one: CoverCandidate, isBefore: boolean): boolean {
  if (other.strength && !one.strength) return false;
  if (!costsLess(other, one, isBefore)) return false;
  return (
    includesAll(other.covers, one.covers) &&
    includesAll(other.serves, one.serves) &&
    includesAll(one.needs, other.needs)
  );
}

function costsLess(other: CoverCandidate, one: CoverCandidate, isBefore: boolean): boolean {
  if (other.strain !== one.strain) return other.strain < one.strain;
  if (other.change !== one.change) return other.change < one.change;
  return isBefore;
}

function includesAll(all: readonly number[], some: readonly number[]): boolean {
  return some.every((each) => all.includes(each));
}
