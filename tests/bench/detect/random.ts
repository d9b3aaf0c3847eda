/** A seeded source of draws (mulberry32, public domain): the same seed gives the same client. */
export type Draws = {
  uniform: (low?: number, high?: number) => number;
  normal: (mean?: number, sd?: number) => number;
  chance: (p: number) => boolean;
  pick: <T>(items: readonly T[]) => T;
  int: (low: number, high: number) => number;
};

export function draws(seed: number): Draws {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  const normal = (mean = 0, sd = 1) =>
    mean + sd * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  return {
    uniform: (low = 0, high = 1) => low + (high - low) * next(),
    normal,
    chance: (p) => next() < p,
    pick: (items) => {
      const item = items[Math.floor(next() * items.length)];
      if (item === undefined) throw new Error('nothing to pick from');
      return item;
    },
    int: (low, high) => low + Math.floor(next() * (high - low + 1)),
  };
}
