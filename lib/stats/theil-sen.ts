import { type TimedValue, varianceOfS } from './kendall-s.ts';
import { medianInPlace } from './median.ts';
import { normalQuantile } from './normal-quantile.ts';
import { orderStatistic } from './order-statistic.ts';

export type TheilSen = {
  /** Median of all pair slopes, value per unit of time. */
  slope: number;
  /** Interval of the slope; SciPy's rank rule. */
  lower: number;
  upper: number;
  /** Conover's intercept: median value - slope x median time. */
  intercept: number;
  pairs: number;
};

/**
 * Slope of a series that a few odd points do not move (Theil 1950, Sen 1968), with the interval at `confidence` (0-1)
 * from the ranks of the pair slopes. Any order of points, ties allowed. Undefined when all times are equal.
 */
export function theilSen(points: readonly TimedValue[], confidence: number): TheilSen | undefined {
  const slopes = pairSlopes(points);
  const z = normalQuantile((1 + confidence) / 2);
  const slope = medianInPlace(slopes);
  if (slope === undefined || z === undefined) return undefined;
  const reach = z * Math.sqrt(varianceOfS(points));
  const last = slopes.length - 1;
  const rank = (position: number) => orderStatistic(slopes, Math.min(last, Math.max(0, position))) ?? slope;
  const value = medianInPlace(Float64Array.from(points, (point) => point.value)) ?? 0;
  const time = medianInPlace(Float64Array.from(points, (point) => point.at)) ?? 0;
  return {
    slope,
    lower: rank(Math.round((slopes.length - reach) / 2) - 1),
    upper: rank(upperRank(slopes.length, reach)),
    intercept: value - slope * time,
    pairs: slopes.length,
  };
}

/**
 * Whether the upper end of that interval is under `limit`: counts pair slopes instead of ordering them, a fifth of the
 * work where most series are asked nothing else. False when all times are equal.
 */
export function isSlopeUnder(points: readonly TimedValue[], confidence: number, limit: number): boolean {
  const slopes = pairSlopes(points);
  const pairs = slopes.length;
  let under = 0;
  for (const slope of slopes) if (slope < limit) under += 1;
  // The upper end is never under the median: most series are answered here.
  if (under * 2 < pairs) return false;
  const z = normalQuantile((1 + confidence) / 2);
  if (z === undefined || pairs === 0) return false;
  return under > Math.min(pairs - 1, upperRank(pairs, z * Math.sqrt(varianceOfS(points))));
}

/** SciPy's rule for the rank of the upper end, from 0. */
function upperRank(pairs: number, reach: number): number {
  return Math.round((pairs + reach) / 2);
}

/** `+ 0` so that a flat pair is 0, never minus zero, whatever the order of rows. */
function pairSlopes(points: readonly TimedValue[]): Float64Array {
  const slopes = new Float64Array((points.length * (points.length - 1)) / 2);
  let count = 0;
  for (let i = 0; i < points.length; i += 1) {
    const first = points[i];
    if (!first) continue;
    for (let j = i + 1; j < points.length; j += 1) {
      const second = points[j];
      if (!second || second.at === first.at) continue;
      slopes[count] = (second.value - first.value) / (second.at - first.at) + 0;
      count += 1;
    }
  }
  return slopes.subarray(0, count);
}
