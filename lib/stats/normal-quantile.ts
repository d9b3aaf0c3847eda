import { normalCdf } from './normal-cdf.ts';

/** The z below which a share `p` of a standard normal lies, by bisection. Undefined unless 0 < p < 1. */
export function normalQuantile(p: number): number | undefined {
  if (!(p > 0 && p < 1)) return undefined;
  let low = -10;
  let high = 10;
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (normalCdf(middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
