import type { HistoryRung } from '#lib/domain/history.ts';
import { TISSUES, type Tissue } from '#lib/domain/vocabulary.ts';
import { MOBILITY_FROM } from './gap-numbers.ts';

/** Tissues whose mobility belongs to a rung: those it loads with 0.5 or more. A mobility rung asks for none. */
export function mobilityAskedBy({ family, weights }: Pick<HistoryRung, 'family' | 'weights'>): Tissue[] {
  if (family === 'mobility') return [];
  return TISSUES.filter((tissue) => (weights[tissue] ?? 0) >= MOBILITY_FROM);
}

/**
 * Tissues that a mobility ladder prepares: those its first rung loads most (a bridge loads the wrists more than the
 * back it opens; its first rung does not). Empty for ladders of other families. Own rule.
 */
export function mobilityGivenBy({
  rungs,
}: {
  rungs: readonly Pick<HistoryRung, 'family' | 'weights'>[];
}): Tissue[] {
  const [first] = rungs;
  if (first?.family !== 'mobility') return [];
  const most = Math.max(0, ...TISSUES.map((tissue) => first.weights[tissue] ?? 0));
  return most > 0 ? TISSUES.filter((tissue) => first.weights[tissue] === most) : [];
}
