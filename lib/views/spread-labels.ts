/**
 * Moves places (px from the top) apart so that neighbours are at least `gap` apart; order and, where there is room,
 * place are kept. Answers in the order given.
 */
export function apart(places: readonly number[], gap: number): number[] {
  const order = places.map((place, index) => ({ place, index })).sort((a, b) => a.place - b.place);
  const moved = [...places];
  let last = Number.NEGATIVE_INFINITY;
  for (const { place, index } of order) {
    last = Math.max(place, last + gap);
    moved[index] = last;
  }
  return moved;
}
