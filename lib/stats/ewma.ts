/**
 * Exponentially weighted mean of daily values, oldest first, lambda = 2 / (days + 1), seeded with the first value
 * (Williams S et al., Br J Sports Med 2017;51(3):209-210). In the unit of the values; `undefined` for none.
 * Example over 7 days: 300, 0, 400, 200, 0 gives 188.671875.
 */
export function ewma(values: readonly number[], days: number): number | undefined {
  const lambda = 2 / (days + 1);
  let mean: number | undefined;
  for (const value of values) mean = mean === undefined ? value : lambda * value + (1 - lambda) * mean;
  return mean;
}
