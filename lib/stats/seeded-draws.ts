/** Draws that look random and are not: the same seed gives the same ones, in the same order. */
export type SeededDraws = {
  /** Over 0 and under 1. */
  uniform: () => number;
  /** Standard normal. */
  normal: () => number;
};

const TWO_TO_32 = 2 ** 32;

/**
 * A source of draws from a text: mulberry32 (public domain) for the bits, Marsaglia's polar method (Marsaglia & Bray
 * 1964, SIAM Rev 6(3)) for normals. The text is hashed first (FNV-1a, then a 32-bit finaliser), so that seeds that
 * differ in one letter give unlike draws.
 */
export function seededDraws(seed: string): SeededDraws {
  let state = hash(seed);
  let spare: number | undefined;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / TWO_TO_32;
  };
  const normal = () => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    for (;;) {
      const [a, b] = [2 * uniform() - 1, 2 * uniform() - 1];
      const square = a * a + b * b;
      if (square >= 1 || square === 0) continue;
      const factor = Math.sqrt((-2 * Math.log(square)) / square);
      spare = b * factor;
      return a * factor;
    }
  };
  return { uniform, normal };
}

function hash(text: string): number {
  let state = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) state = Math.imul(state ^ text.charCodeAt(at), 0x01000193);
  state = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
  state = Math.imul(state ^ (state >>> 13), 0xc2b2ae35);
  return (state ^ (state >>> 16)) >>> 0;
}
