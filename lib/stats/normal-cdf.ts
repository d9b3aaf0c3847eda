/**
 * Share of a standard normal below `z`. Series of Marsaglia (2004, J Stat Software 11(4)) near the middle, continued
 * fraction in the tails, so that small tails keep their digits. Never undefined; NaN stays NaN.
 */
export function normalCdf(z: number): number {
  if (z < -3) return upperTail(-z);
  if (z > 3) return 1 - upperTail(z);
  let term = z;
  let sum = z;
  for (let k = 3; Math.abs(term) > 1e-17; k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return 0.5 + normalDensity(z) * sum;
}

/** Mills' ratio as a continued fraction, from the far end back. */
function upperTail(z: number): number {
  let fraction = z;
  for (let k = 80; k >= 1; k -= 1) fraction = z + k / fraction;
  return normalDensity(z) / fraction;
}

/** Height of the standard normal at `z`. */
export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}
