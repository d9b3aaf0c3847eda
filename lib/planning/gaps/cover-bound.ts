import type { CoverScore } from './cover-program.ts';
import { type CoverSearch, canTake } from './cover-search.ts';

/** Sums of parts of whole numbers, rounded up: a little below, so that no answer is ever cut off by rounding. */
const SLACK = 1e-6;

/**
 * What every answer on this way comes to at least. Each thing still open is paid for by the cheapest share of a
 * candidate that covers it (a candidate's cost is split evenly over what it would newly cover). As many open things
 * as the best answer so far may still leave uncovered are counted for nothing, the dearest first.
 */
export function coverBound(search: CoverSearch): CoverScore {
  const gains = search.candidates.map((one, index) =>
    canTake(search, index) ? one.covers.filter((each) => isOpen(search, each)).length : 0,
  );
  const open = search.byElement.flatMap((who, element) => {
    if (!isOpen(search, element)) return [];
    const able = who.filter((index) => canTake(search, index));
    return [{ able, strengthOnly: able.every((index) => search.candidates[index]?.strength === true) }];
  });
  const alone = open.filter(({ able }) => able.length === 0).length;
  const uncovered = search.leftCount + alone + beyondStrength(search, open, gains);
  const mayLeave = Math.max(0, search.best.score[0] - search.leftCount - alone);
  const atLeast = (cost: (index: number) => number) => {
    const shares = open
      .filter(({ able }) => able.length > 0)
      .map(({ able }) => Math.min(...able.map((index) => cost(index) / (gains[index] ?? 1))))
      .sort((a, b) => a - b);
    const kept = shares.slice(0, Math.max(0, shares.length - mayLeave));
    return Math.ceil(kept.reduce((sum, share) => sum + share, 0) - SLACK);
  };
  return [
    uncovered,
    search.chosen.length + atLeast(() => 1),
    search.strain + atLeast((index) => search.candidates[index]?.strain ?? 0),
    search.change + atLeast((index) => search.candidates[index]?.change ?? 0),
  ];
}

type Open = { able: number[]; strengthOnly: boolean };

/** Open things beyond what the strength drills still allowed can cover. */
function beyondStrength(search: CoverSearch, open: readonly Open[], gains: readonly number[]): number {
  const strengthOnly = open.filter(({ able, strengthOnly }) => able.length > 0 && strengthOnly).length;
  if (strengthOnly === 0) return 0;
  const widest = Math.max(...gains.filter((_, index) => search.candidates[index]?.strength === true));
  return Math.max(0, strengthOnly - (search.mostStrength - search.strength) * widest);
}

function isOpen(search: CoverSearch, element: number): boolean {
  return search.covered[element] === 0 && search.left[element] !== 1;
}
