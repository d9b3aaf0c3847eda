/** Room for the last bits of floating sums, far under any unit of the trade: a value on the limit is on the limit. */
const ROUNDING = 1e-9;

/** True when `value` is at or over `limit`. */
export function reaches(value: number, limit: number): boolean {
  return value >= limit - ROUNDING * Math.max(1, Math.abs(limit));
}

/** True when `value` is over `limit`, not only on it. */
export function exceeds(value: number, limit: number): boolean {
  return value > limit + ROUNDING * Math.max(1, Math.abs(limit));
}
