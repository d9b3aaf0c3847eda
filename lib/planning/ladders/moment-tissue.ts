import type { Tissue } from '#lib/domain/vocabulary.ts';

/** Tissues whose weight follows the moment at the shoulder: in planches, front levers, back levers. */
const CARRIERS = ['shoulder-forward', 'upper-back', 'shoulder-behind'] as const satisfies readonly Tissue[];

/** Of the tissues that can carry the moment, the one this drill loads most; undefined where it loads none. */
export function momentTissue(weights: Partial<Record<Tissue, number>>): Tissue | undefined {
  const loaded = CARRIERS.filter((tissue) => (weights[tissue] ?? 0) > 0);
  return loaded.sort((a, b) => (weights[b] ?? 0) - (weights[a] ?? 0))[0];
}
