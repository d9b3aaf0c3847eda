/**
 * The `rank`-th smallest value (0: the smallest), by Hoare's selection. Reorders `values`, which is the caller's own
 * copy. Undefined outside the list. No randomness: the same list takes the same steps.
 */
export function orderStatistic(values: Float64Array, rank: number): number | undefined {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const pivot = values[(low + high) >> 1] ?? 0;
    let left = low;
    let right = high;
    while (left <= right) {
      while ((values[left] ?? 0) < pivot) left += 1;
      while ((values[right] ?? 0) > pivot) right -= 1;
      if (left > right) break;
      swap(values, left, right);
      left += 1;
      right -= 1;
    }
    if (rank <= right) high = right;
    else if (rank >= left) low = left;
    else break;
  }
  return values[rank];
}

function swap(values: Float64Array, a: number, b: number): void {
  const kept = values[a] ?? 0;
  values[a] = values[b] ?? 0;
  values[b] = kept;
}
