import type { HistoryRung, HistorySet } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { hasResult, isOfSide, type RungDay } from './rung-days.ts';
import type { Limits } from './thresholds.ts';

export type ScoredDay = Pick<RungDay, 'date' | 'at'> & { score: number };
type Done = HistorySet & { value: number };

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
  return days.flatMap((day) => {
    const score = day.counts ? scoreOf(rung, day.sets, side, limits) : undefined;
    return score === undefined ? [] : [{ date: day.date, at: day.at, score }];
  });
}

function sideScore(
  rung: HistoryRung,
  sets: readonly HistorySet[],
  side: Side,
  limits: Limits,
): number | undefined {
  const done = sets.filter((set) => hasResult(set) && isOfSide(set, side)) as Done[];
  if (rung.measure === 'made-tried') return triesScore(rung, done, limits);
  const { sets: asked, target } = rung.pass;
  if (done.length < asked * limits['score.atLeastShare']) return undefined;
  const shares: number[] = [];
  for (const set of done) if (set.clean) shares.push(shareOf(set.value, target, rung.measure));
  if (shares.length > asked) shares.sort((a, b) => b - a).length = asked;
  return shares.reduce((sum, share) => sum + share, 0) / asked;
}

function triesScore(rung: HistoryRung, done: readonly Done[], limits: Limits) {
  const asked = rung.pass.tries ?? rung.pass.target;
  const tried = done.reduce((sum, set) => sum + (set.tried ?? set.planned ?? asked), 0);
  const made = done.reduce((sum, set) => sum + (set.clean ? set.value : 0), 0);
  if (tried < asked * limits['score.atLeastShare']) return undefined;
  return Math.min(1, (made * asked) / Math.max(tried, asked) / rung.pass.target);
}

function shareOf(value: number, target: number, measure: HistoryRung['measure']): number {
  if (measure === 'range-down') return value <= target ? 1 : Math.max(0, target) / value;
  return target > 0 ? Math.max(0, Math.min(value, target)) / target : 1;
}
