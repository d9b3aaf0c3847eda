/**
 * Moves places (px from the top) apart so that neighbours are at least `gap` apart and, where there is room, none
 * lies below `bottom`. Order is kept. Answers in the order given.
 */
export function apart(places: readonly number[], gap: number, bottom = Number.POSITIVE_INFINITY): number[] {
  const order = places.map((place, index) => ({ place, index })).sort((a, b) => a.place - b.place);
  const moved = [...places];
  let last = Number.NEGATIVE_INFINITY;
  for (const { place, index } of order) {
    last = Math.max(place, last + gap);
    moved[index] = last;
  }
  let limit = bottom;
  for (const { index } of order.reverse()) {
    moved[index] = Math.min(moved[index] ?? 0, limit);
    limit = (moved[index] ?? 0) - gap;
  }
  return moved;
}
