import type { CoverCandidate, CoverProgram, CoverScore } from './cover-program.ts';

/** The state of one search: what is chosen on the way, and the best answer so far. */
export type CoverSearch = {
  candidates: readonly CoverCandidate[];
  /** Who covers a thing, who serves a group. */
  byElement: readonly (readonly number[])[];
  byGroup: readonly (readonly number[])[];
  mostStrength: number;
  chosen: number[];
  /** How many of the chosen cover each thing, serve each group, need each group. */
  covered: Int16Array;
  served: Int16Array;
  needed: Int16Array;
  /** 1: left uncovered on purpose on this way; every candidate for it is forbidden. */
  left: Int8Array;
  leftCount: number;
  forbidden: Int8Array;
  strength: number;
  strain: number;
  change: number;
  best: { score: CoverScore; chosen: number[] };
};

/** Starts with nothing chosen, which is always allowed: everything is uncovered. */
export function newSearch(candidates: readonly CoverCandidate[], program: CoverProgram): CoverSearch {
  const groups = Math.max(0, ...candidates.flatMap((one) => [...one.serves, ...one.needs].map((g) => g + 1)));
  const who = (has: (one: CoverCandidate) => boolean) =>
    candidates.flatMap((one, index) => (has(one) ? [index] : []));
  return {
    candidates,
    byElement: Array.from({ length: program.elements }, (_, element) =>
      who((one) => one.covers.includes(element)),
    ),
    byGroup: Array.from({ length: groups }, (_, group) => who((one) => one.serves.includes(group))),
    mostStrength: program.mostStrength,
    chosen: [],
    covered: new Int16Array(program.elements),
    served: new Int16Array(groups),
    needed: new Int16Array(groups),
    left: new Int8Array(program.elements),
    leftCount: 0,
    forbidden: new Int8Array(candidates.length),
    strength: 0,
    strain: 0,
    change: 0,
    best: { score: [program.elements, 0, 0, 0], chosen: [] },
  };
}

export function canTake(search: CoverSearch, index: number): boolean {
  if (search.forbidden[index] === 1) return false;
  return search.candidates[index]?.strength !== true || search.strength < search.mostStrength;
}

export function take(search: CoverSearch, index: number): void {
  search.chosen.push(index);
  // A chosen one is no longer there to be chosen.
  search.forbidden[index] = 1;
  count(search, index, 1);
}

export function give(search: CoverSearch, index: number): void {
  search.chosen.pop();
  search.forbidden[index] = 0;
  count(search, index, -1);
}

function count(search: CoverSearch, index: number, by: 1 | -1): void {
  const one = search.candidates[index];
  if (!one) return;
  add(search.covered, one.covers, by);
  add(search.served, one.serves, by);
  add(search.needed, one.needs, by);
  if (one.strength) search.strength += by;
  search.strain += by * one.strain;
  search.change += by * one.change;
}

function add(into: Int16Array, at: readonly number[], by: number): void {
  for (const index of at) into[index] = (into[index] ?? 0) + by;
}
