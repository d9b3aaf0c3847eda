export type TwoByTwo = { hits: number; of: number; otherHits: number; otherOf: number };

/**
 * Fisher's exact test, one-sided: the chance of `hits` or more in the first group, with all margins fixed, when both
 * groups are alike (hypergeometric upper tail). Undefined for negative, broken or impossible counts.
 */
export function fisherExact({ hits, of, otherHits, otherOf }: TwoByTwo): number | undefined {
  const counts = [hits, of, otherHits, otherOf];
  if (counts.some((count) => !Number.isInteger(count) || count < 0)) return undefined;
  if (hits > of || otherHits > otherOf) return undefined;
  const allHits = hits + otherHits;
  const most = Math.min(of, allHits);
  let sum = 0;
  for (let k = hits; k <= most; k += 1) {
    sum += Math.exp(logChoose(of, k) + logChoose(otherOf, allHits - k) - logChoose(of + otherOf, allHits));
  }
  return Math.min(1, sum);
}

function logChoose(n: number, k: number): number {
  if (k < 0 || k > n) return Number.NEGATIVE_INFINITY;
  let sum = 0;
  for (let i = 1; i <= Math.min(k, n - k); i += 1) sum += Math.log((n - i + 1) / i);
  return sum;
}
