export type Random = {
  /** Between 0 (with) and 1 (without). */
  next: () => number;
  /** Whole number from `low` to `high`, both included. */
  whole: (low: number, high: number) => number;
  /** True about `share` of the time. */
  chance: (share: number) => boolean;
  pick: <T>(items: readonly [T, ...T[]]) => T;
  uuid: () => string;
};

/** A small seeded generator (mulberry32): the same seed gives the same demo on every machine. */
export function seededRandom(seed: string): Random {
  let state = seedOf(seed);
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const whole = (low: number, high: number) => low + Math.floor(next() * (high - low + 1));
  const hex = (digits: number) => Array.from({ length: digits }, () => whole(0, 15).toString(16)).join('');
  return {
    next,
    whole,
    chance: (share) => next() < share,
    pick: (items) => items[whole(0, items.length - 1)] ?? items[0],
    uuid: () => `${hex(8)}-${hex(4)}-4${hex(3)}-a${hex(3)}-${hex(12)}`,
  };
}

function seedOf(text: string): number {
  let hash = 2166136261; // FNV-1a
  for (const letter of text) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 16777619);
  return hash | 0;
}
