import type { Support, Tissue } from '#lib/domain/vocabulary.ts';

type Change = { tissue: Tissue; times?: number; plus?: number };

/** How a support changes the stress profile of a set: factors and additions. Common practice, no source. */
const CHANGES: Readonly<Record<Support, readonly Change[]>> = {
  'hard-floor': [],
  'hands-turned-out': [
    { tissue: 'wrist-back', times: 0.85 },
    { tissue: 'elbow-bending', plus: 0.1 },
  ],
  wedge: [{ tissue: 'wrist-back', times: 0.75 }],
  'parallel-bars': [
    { tissue: 'wrist-back', times: 0.25 },
    { tissue: 'wrist-forward', plus: 0.15 },
  ],
  fists: [
    { tissue: 'wrist-back', times: 0.15 },
    { tissue: 'wrist-forward', plus: 0.1 },
  ],
  rings: [
    { tissue: 'wrist-back', times: 0.2 },
    { tissue: 'wrist-forward', plus: 0.2 },
    { tissue: 'elbow-bending', plus: 0.1 },
  ],
  'soft-ground': [{ tissue: 'wrist-back', times: 1.15 }],
  bar: [],
  'bar-straps': [{ tissue: 'wrist-forward', times: 0.6 }],
};

type Weights = Readonly<Partial<Record<Tissue, number>>>;

/**
 * The weights (0-1) of a rung as done on a support. A support adds only where the hands carry something: a rung
 * without weights stays without. Never over 1.
 */
export function weightsOnSupport(weights: Weights, support: Support | null): Weights {
  const changes = support ? CHANGES[support] : [];
  if (changes.length === 0) return weights;
  const changed: Partial<Record<Tissue, number>> = { ...weights };
  for (const { tissue, times = 1, plus = 0 } of changes) {
    const weight = Math.min(1, (weights[tissue] ?? 0) * times + plus);
    if (weight > 0) changed[tissue] = weight;
  }
  return changed;
}
