/**
 * The smallest value at or under which at least the share `p` of all weight lies, for each `p`. Weights are 0 or more,
 * one for each value; without any weight all values count alike. No values: empty.
 */
export function weightedQuantiles(
  values: Float64Array,
  weights: Float64Array,
  shares: readonly number[],
): number[] {
  if (values.length === 0) return [];
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const weightOf = (index: number) => (total > 0 ? (weights[index] ?? 0) / total : 1 / values.length);
  const order = Uint32Array.from(values, (_, index) => index).sort(
    (a, b) => (values[a] ?? 0) - (values[b] ?? 0) || a - b,
  );
  return shares.map((share) => {
    let sum = 0;
    for (const index of order) {
      sum += weightOf(index);
      if (sum >= share - 1e-12) return values[index] ?? 0;
    }
    return values[order.at(-1) ?? 0] ?? 0;
  });
}
