import type { HistoryRung, HistorySet } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import type { RungDay } from './rung-days.ts';
import { hasResult, isOfSide } from './set-result.ts';
import type { Limits } from './thresholds.ts';

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

/** The training days that count and have a score, oldest first. */
export function scoredDays(
  days: readonly RungDay[],
  rung: HistoryRung,
  side: Side,
  limits: Limits,
): ScoredDay[] {
  const scored: ScoredDay[] = [];
  for (const { date, at, sets, counts } of days) {
    const score = counts ? scoreOf(rung, sets, side, limits) : undefined;
    if (score !== undefined) scored.push({ date, at, score });
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
  const shares: number[] = [];
  let done = 0;
  for (const set of sets) {
    if (!hasResult(set) || !isOfSide(set, side)) continue;
    done += 1;
    if (set.clean) shares.push(shareOf(set.value, target, rung.measure));
  }
  if (done < asked * limits['score.atLeastShare']) return undefined;
  if (shares.length > asked) shares.sort((a, b) => b - a).length = asked;
  let sum = 0;
  for (const share of shares) sum += share;
  return sum / asked;
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
