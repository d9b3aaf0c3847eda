import type { HistoryRung, HistorySet } from '#lib/domain/history.ts';
import type { RungDay } from './rung-days.ts';
import { hasResult } from './set-result.ts';

/** Left and right of one rung on one day. */
export type SidePair = {
  date: string;
  /** Means of the clean sets both sides have, in the rung's measure. */
  left: number;
  right: number;
};

/** `saysNothing`: every set of both sides reached its target. */
export type ComparedDay = { pair: SidePair; saysNothing: boolean };

/**
 * Same-day pairs, oldest first. A pair in which every set reached its target says nothing and is left out.
 */
export function sidePairs(days: readonly RungDay[], rung: HistoryRung): SidePair[] {
  return sayingPairs(comparedDays(days, rung));
}

export function sayingPairs(compared: readonly ComparedDay[]): SidePair[] {
  const pairs: SidePair[] = [];
  for (const { pair, saysNothing } of compared) if (!saysNothing) pairs.push(pair);
  return pairs;
}

/** All same-day pairs, oldest first: the mean of the first m clean sets of each side, m = the fewer of both. */
export function comparedDays(days: readonly RungDay[], rung: HistoryRung): ComparedDay[] {
  const all: ComparedDay[] = [];
  for (const { date, counts, sets } of days) {
    if (!counts) continue;
    const left: Result[] = [];
    const right: Result[] = [];
    for (const set of sets) {
      if (!hasResult(set) || !set.clean) continue;
      if (set.side === 'left') left.push(set);
      else if (set.side === 'right') right.push(set);
    }
    const both = Math.min(left.length, right.length);
    if (both === 0) continue;
    left.length = both;
    right.length = both;
    const saysNothing = areReached(left, rung) && areReached(right, rung);
    all.push({ pair: { date, left: meanOf(left), right: meanOf(right) }, saysNothing });
  }
  return all;
}

type Result = HistorySet & { value: number };

function areReached(sets: readonly Result[], rung: HistoryRung): boolean {
  for (const set of sets) if (set.value < targetOf(set, rung)) return false;
  return true;
}

/** Percent of the larger side by which `side` is behind; negative when it is ahead. */
export function percentBehind({ left, right }: SidePair, side: 'left' | 'right'): number {
  const larger = Math.max(left, right);
  if (larger <= 0) return 0;
  return ((side === 'left' ? right - left : left - right) / larger) * 100;
}

function targetOf(set: HistorySet, rung: HistoryRung): number {
  return set.planned ?? rung.pass.target;
}

function meanOf(sets: readonly { value: number }[]): number {
  return sets.reduce((sum, set) => sum + set.value, 0) / sets.length;
}
