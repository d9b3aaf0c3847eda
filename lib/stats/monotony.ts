export type Monotony =
  | { monotony: number; strain: number }
  /** Why there is no number: all days 0, all days equal and over 0, or no days. */
  | { reason: 'no-training' | 'no-variation' | 'no-days' };

/**
 * Monotony (mean of daily loads over their population standard deviation, no unit) and strain (total x monotony, in
 * the unit of the loads), Foster 1998. The ratio has no value without spread: then a reason stands instead.
 * Example: 360, 0, 525, 90, 0, 720, 180 gives 1.0428 and 1955.2.
 */
export function monotony(dailyLoads: readonly number[]): Monotony {
  const count = dailyLoads.length;
  if (count === 0) return { reason: 'no-days' };
  const total = dailyLoads.reduce((sum, load) => sum + load, 0);
  const mean = total / count;
  const first = dailyLoads[0];
  if (dailyLoads.every((load) => load === first))
    return { reason: total === 0 ? 'no-training' : 'no-variation' };
  const squares = dailyLoads.reduce((sum, load) => sum + (load - mean) ** 2, 0);
  const ratio = mean / Math.sqrt(squares / count);
  return { monotony: ratio, strain: total * ratio };
}
