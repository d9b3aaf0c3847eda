export type BinomialTail = { successes: number; trials: number; chance: number; tail: 'lower' | 'upper' };

/**
 * Exact probability of `successes` or fewer (lower) or more (upper) in `trials`, each with the given chance.
 * Undefined for no whole counts, successes over trials or a chance outside 0-1.
 */
export function binomialTail({ successes, trials, chance, tail }: BinomialTail): number | undefined {
  const whole =
    Number.isInteger(successes) && Number.isInteger(trials) && successes >= 0 && successes <= trials;
  if (!whole || !(chance >= 0 && chance <= 1)) return undefined;
  if (tail === 'upper') {
    return binomialTail({ successes: trials - successes, trials, chance: 1 - chance, tail: 'lower' });
  }
  if (successes === trials || chance === 0) return 1;
  if (chance === 1) return 0;
  let logTerm = trials * Math.log1p(-chance);
  let sum = Math.exp(logTerm);
  for (let k = 1; k <= successes; k += 1) {
    logTerm += Math.log((trials - k + 1) / k) + Math.log(chance) - Math.log1p(-chance);
    sum += Math.exp(logTerm);
  }
  return Math.min(1, sum);
}
