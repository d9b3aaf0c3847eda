import type { HistoryRung, HistorySet } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { oncePerCheckIns } from './once-per-view.ts';
import { type RungDay, rungDays } from './rung-days.ts';
import { hasResult, isOfSide } from './set-result.ts';
import type { Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';
import { newByRung } from './view-work.ts';

export type ScoredDay = Pick<RungDay, 'date' | 'at'> & { score: number };

/**
 * Share of the pass mark reached on one training day (0-1): sum of min(set, target) over the best n clean sets, by
 * n x target, n = sets of the pass mark; the weaker side where each side is asked. Undefined with under half of n
 * sets done. Tries: made in the tries of the pass mark, by the number asked.
 */
export function scoreOf(
  rung: HistoryRung,
  sets: readonly HistorySet[],
  side: Side,
  limits: Limits,
): number | undefined {
  if (!rung.eachSide || side !== 'both') return sideScore(rung, sets, side, limits);
  const left = sideScore(rung, sets, 'left', limits);
  const right = sideScore(rung, sets, 'right', limits);
  return left === undefined || right === undefined ? undefined : Math.min(left, right);
}

type Scored = { limits: Limits; bySide: Map<string, ScoredDay[]> };
const scoredOf = oncePerCheckIns((): { scored: Scored | undefined } => ({ scored: undefined }), carried);

/** Those of rungs that were not trained since. */
function carried(view: ClientView, { scored }: { scored: Scored | undefined }) {
  if (!scored) return { scored };
  const kept = [...scored.bySide].filter(([key]) => !newByRung(view).has(rungOfKey(key)));
  return { scored: { limits: scored.limits, bySide: new Map(kept) } };
}

function keyOf(side: Side, rungId: string): string {
  return `${side} ${rungId}`;
}

function rungOfKey(key: string): string {
  return key.slice(key.indexOf(' ') + 1);
}

/** The training days of a rung that count and have a score, oldest first. */
export function scoredDays(
  view: ClientView,
  rung: HistoryRung,
  side: Side,
  limits: Limits,
): readonly ScoredDay[] {
  const held = scoredOf(view);
  if (held.scored?.limits !== limits) held.scored = { limits, bySide: new Map() };
  const key = keyOf(side, rung.id);
  let scored = held.scored.bySide.get(key);
  if (!scored) {
    scored = [];
    for (const { date, at, sets, counts } of rungDays(view, rung.id)) {
      const score = counts ? scoreOf(rung, sets, side, limits) : undefined;
      if (score !== undefined) scored.push({ date, at, score });
    }
    held.scored.bySide.set(key, scored);
  }
  return scored;
}

function sideScore(
  rung: HistoryRung,
  sets: readonly HistorySet[],
  side: Side,
  limits: Limits,
): number | undefined {
  if (rung.measure === 'made-tried') return triesScore(rung, sets, side, limits);
  const { sets: asked, target } = rung.pass;
  let done = 0;
  let clean = 0;
  let whole = 0;
  let sum = 0;
  for (const set of sets) {
    if (!hasResult(set) || !isOfSide(set, side)) continue;
    done += 1;
    if (!set.clean) continue;
    clean += 1;
    const share = shareOf(set.value, target, rung.measure);
    if (share === 1) whole += 1;
    sum += share;
  }
  if (done < asked * limits['score.atLeastShare']) return undefined;
  if (whole >= asked) return 1;
  return (clean > asked ? sumOfBest(rung, sets, side) : sum) / asked;
}

/** Shares of the best clean sets, as many as the pass mark asks, largest first. */
function sumOfBest({ pass, measure }: HistoryRung, sets: readonly HistorySet[], side: Side): number {
  const best: number[] = [];
  for (const set of sets) {
    if (!hasResult(set) || !isOfSide(set, side) || !set.clean) continue;
    const share = shareOf(set.value, pass.target, measure);
    let at = best.length;
    for (; at > 0 && (best[at - 1] ?? 0) < share; at -= 1) best[at] = best[at - 1] ?? 0;
    best[at] = share;
    if (best.length > pass.sets) best.length = pass.sets;
  }
  let sum = 0;
  for (const share of best) sum += share;
  return sum;
}

function triesScore(rung: HistoryRung, sets: readonly HistorySet[], side: Side, limits: Limits) {
  const asked = rung.pass.tries ?? rung.pass.target;
  let tried = 0;
  let made = 0;
  for (const set of sets) {
    if (!hasResult(set) || !isOfSide(set, side)) continue;
    tried += set.tried ?? set.planned ?? asked;
    if (set.clean) made += set.value;
  }
  if (tried < asked * limits['score.atLeastShare']) return undefined;
  return Math.min(1, (made * asked) / Math.max(tried, asked) / rung.pass.target);
}

function shareOf(value: number, target: number, measure: HistoryRung['measure']): number {
  if (measure === 'range-down') return value <= target ? 1 : Math.max(0, target) / value;
  return target > 0 ? Math.max(0, Math.min(value, target)) / target : 1;
}
