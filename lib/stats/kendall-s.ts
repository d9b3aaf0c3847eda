/** A point of a series: time in whole days, value in any unit. */
export type TimedValue = { at: number; value: number };

/** Kendall's S (later minus earlier, signs added up) and its variance with ties in values and times (Kendall 1975). */
export function kendallS(points: readonly TimedValue[]): { s: number; variance: number } {
  let s = 0;
  for (let i = 0; i < points.length; i += 1) {
    const first = points[i];
    if (!first) continue;
    for (let j = i + 1; j < points.length; j += 1) {
      const second = points[j];
      if (second) s += Math.sign(second.at - first.at) * Math.sign(second.value - first.value);
    }
  }
  return { s, variance: varianceOfS(points) };
}

/** Variance of S when nothing changes, with ties in values and times. 0 under two points. */
export function varianceOfS(points: readonly TimedValue[]): number {
  const n = points.length;
  if (n < 2) return 0;
  const values = groupSizes(points.map((point) => point.value));
  const times = groupSizes(points.map((point) => point.at));
  const v0 = n * (n - 1) * (2 * n + 5);
  const single = (sizes: number[]) => total(sizes, (u) => u * (u - 1) * (2 * u + 5));
  const pairs = (sizes: number[]) => total(sizes, (u) => u * (u - 1));
  const triples = (sizes: number[]) => total(sizes, (u) => u * (u - 1) * (u - 2));
  const both = (pairs(values) * pairs(times)) / (2 * n * (n - 1));
  const three = n > 2 ? (triples(values) * triples(times)) / (9 * n * (n - 1) * (n - 2)) : 0;
  return (v0 - single(values) - single(times)) / 18 + both + three;
}

/** Sizes of the groups of equal numbers, smallest number first; none for none. */
export function groupSizes(numbers: readonly number[]): number[] {
  const sorted = new Float64Array(numbers).sort();
  const sizes: number[] = [];
  let from = 0;
  for (let index = 1; index <= sorted.length; index += 1) {
    if (index < sorted.length && sorted[index] === sorted[from]) continue;
    sizes.push(index - from);
    from = index;
  }
  return sizes;
}

function total(sizes: number[], of: (size: number) => number): number {
  return sizes.reduce((sum, size) => sum + of(size), 0);
}
