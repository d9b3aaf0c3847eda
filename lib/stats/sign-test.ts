import { binomialTail } from './binomial-tail.ts';

/**
 * Exact one-sided sign test: the chance that `more` or more of the untied pairs point one way when neither way is
 * favoured. Ties are left out before. Undefined without pairs.
 */
export function signTest(more: number, fewer: number): number | undefined {
  if (more + fewer === 0) return undefined;
  return binomialTail({ successes: more, trials: more + fewer, chance: 0.5, tail: 'upper' });
}
