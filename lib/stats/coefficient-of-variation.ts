/**
 * Sample standard deviation (n - 1) as percent of the mean. Undefined under two values or at a mean of 0 or less.
 * [19, 20, 21] gives 5.
 */
export function coefficientOfVariation(values: readonly number[]): number | undefined {
  if (values.length < 2) return undefined;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  if (!(mean > 0)) return undefined;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return (Math.sqrt(squares / (values.length - 1)) / mean) * 100;
}
