import { kendallS, type TimedValue } from './kendall-s.ts';
import { normalQuantile } from './normal-quantile.ts';

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
  const slope = middle(slopes);
  if (slope === undefined || z === undefined) return undefined;
  const reach = z * Math.sqrt(kendallS(points).variance);
  const last = slopes.length - 1;
  const lower = slopes[Math.max(0, Math.round((slopes.length - reach) / 2) - 1)] ?? slope;
  const upper = slopes[Math.min(last, Math.round((slopes.length + reach) / 2))] ?? slope;
  const value = middle(Float64Array.from(points, (point) => point.value).sort()) ?? 0;
  const time = middle(Float64Array.from(points, (point) => point.at).sort()) ?? 0;
  return { slope, lower, upper, intercept: value - slope * time, pairs: slopes.length };
}

/** Sorted; `+ 0` so that a flat pair is 0, never minus zero, whatever the order of rows. */
function pairSlopes(points: readonly TimedValue[]): Float64Array {
  const slopes: number[] = [];
  for (let i = 0; i < points.length; i += 1) {
    const first = points[i];
    if (!first) continue;
    for (let j = i + 1; j < points.length; j += 1) {
      const second = points[j];
      if (second && second.at !== first.at)
        slopes.push((second.value - first.value) / (second.at - first.at) + 0);
    }
  }
  return Float64Array.from(slopes).sort();
}

function middle(sorted: Float64Array): number | undefined {
  const half = sorted.length >> 1;
  const upper = sorted[half];
  if (upper === undefined) return undefined;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[half - 1] ?? upper)) / 2;
}
