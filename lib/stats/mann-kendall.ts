import { groupSizes, kendallS, type TimedValue } from './kendall-s.ts';
import { normalCdf } from './normal-cdf.ts';

export type MannKendall = {
  s: number;
  variance: number;
  z: number;
  /** Two-sided p. Exact when times differ and there are at most `EXACT_UP_TO` points, else normal. */
  p: number;
  /** Two-sided p of the normal form with continuity correction. */
  pNormal: number;
  tauA: number;
  exact: boolean;
};

/** Own choice: beyond this the normal form is good to two digits and counts no longer fit a double exactly. */
const EXACT_UP_TO = 18;

/**
 * Is a series rising or falling (Mann 1945, Kendall 1975)? Ties in values and times allowed, any order of points.
 * Undefined under two points. All values equal: p = 1.
 */
export function mannKendall(points: readonly TimedValue[]): MannKendall | undefined {
  const n = points.length;
  if (n < 2) return undefined;
  const { s, variance } = kendallS(points);
  const z = variance > 0 ? (s - Math.sign(s)) / Math.sqrt(variance) : 0;
  const pNormal = Math.min(1, 2 * normalCdf(-Math.abs(z)));
  const timesDiffer = new Set(points.map((point) => point.at)).size === n;
  const exact = timesDiffer && n <= EXACT_UP_TO;
  const upper = exact ? exactTail(Math.abs(s), groupSizes(points.map((point) => point.value))) : 0;
  const p = exact ? (s === 0 ? 1 : Math.min(1, 2 * upper)) : pNormal;
  return { s, variance, z, p, pNormal, tauA: s / ((n * (n - 1)) / 2), exact };
}

/**
 * P(S >= s) when every order of the values is equally likely. Groups of equal values have the given sizes. Counts
 * arrangements by inversions (Gaussian multinomial: product over steps of [k]_q, each tied group divided out).
 */
export function exactTail(s: number, sizes: readonly number[]): number {
  const n = sizes.reduce((sum, size) => sum + size, 0);
  let counts = [1];
  for (let k = 2; k <= n; k += 1) counts = timesSteps(counts, k);
  for (const size of sizes) for (let k = 2; k <= size; k += 1) counts = dividedBySteps(counts, k);
  const most = counts.length - 1;
  let all = 0;
  let tail = 0;
  counts.forEach((count, inversions) => {
    all += count;
    if (most - 2 * inversions >= s) tail += count;
  });
  return tail / all;
}

/** Times 1 + q + … + q^(k-1). */
function timesSteps(counts: number[], k: number): number[] {
  const out = new Array<number>(counts.length + k - 1).fill(0);
  let window = 0;
  for (let i = 0; i < out.length; i += 1) {
    window += (counts[i] ?? 0) - (counts[i - k] ?? 0);
    out[i] = window;
  }
  return out;
}

/** Divided by 1 + q + … + q^(k-1); the division has no rest. */
function dividedBySteps(counts: number[], k: number): number[] {
  const out: number[] = [];
  for (let i = 0; i <= counts.length - k; i += 1) {
    let taken = 0;
    for (let j = Math.max(0, i - k + 1); j < i; j += 1) taken += out[j] ?? 0;
    out.push((counts[i] ?? 0) - taken);
  }
  return out;
}
