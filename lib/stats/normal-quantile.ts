import { normalCdf, normalDensity } from './normal-cdf.ts';

/** The z below which a share `p` of a standard normal lies: bisection, then Newton. Undefined unless 0 < p < 1. */
export function normalQuantile(p: number): number | undefined {
  if (!(p > 0 && p < 1)) return undefined;
  if (last.p !== p) last = { p, z: search(p) };
  return last.z;
}

/** The same few levels are asked for thousands of times a night, mostly one after the other. */
let last = { p: 0.5, z: 0 };

function search(p: number): number {
  let low = -10;
  let high = 10;
  for (let step = 0; step < 14; step += 1) {
    const middle = (low + high) / 2;
    if (normalCdf(middle) < p) low = middle;
    else high = middle;
  }
  let z = (low + high) / 2;
  for (let step = 0; step < 3; step += 1) z -= (normalCdf(z) - p) / normalDensity(z);
  return z;
}
