import { coverBound } from './cover-bound.ts';
import {
  type CoverAnswer,
  type CoverCandidate,
  type CoverProgram,
  type CoverScore,
  compareScores,
} from './cover-program.ts';
import { type CoverSearch, canTake, give, newSearch, take } from './cover-search.ts';
import { undominated } from './undominated.ts';

/**
 * The best answer of a program, exactly, by branch and bound over whole numbers: branch on the open demand with the
 * fewest candidates left, each candidate in turn, the earlier ones then forbidden; last, leave the thing uncovered.
 * Aims in the order of `CoverScore`; between equals the list of keys that comes first. The order of the candidates in
 * the program changes nothing. Never fails: with nothing to choose from everything is uncovered.
 *
 * Own code, not a solver in WebAssembly: the program is small (tens of candidates), all its numbers are whole, and the
 * answer has to be the same on every machine and after every update; a floating-point solver would need a pass for
 * every aim, tolerances, and still leave ties to itself. Checked against all subsets and against HiGHS in the tests.
 */
export function solveCover(program: CoverProgram): CoverAnswer {
  const sorted = [...program.candidates].sort((a, b) => (a.key < b.key ? -1 : 1));
  const candidates = undominated(sorted);
  const search = newSearch(candidates, program);
  visit(search);
  return answerOf(search, candidates);
}

function visit(search: CoverSearch): void {
  if (compareScores(coverBound(search), search.best.score) > 0) return;
  const demand = tightestDemand(search);
  if (demand === 'none') {
    keep(search);
    return;
  }
  const tried: number[] = [];
  for (const index of inPromisingOrder(search, demand.candidates)) {
    take(search, index);
    visit(search);
    give(search, index);
    search.forbidden[index] = 1;
    tried.push(index);
  }
  if (demand.element !== undefined) {
    search.left[demand.element] = 1;
    search.leftCount += 1;
    visit(search);
    search.leftCount -= 1;
    search.left[demand.element] = 0;
  }
  for (const index of tried) search.forbidden[index] = 0;
}

/** What is still asked for: a thing to cover, or a mobility group that a chosen candidate needs. */
type Demand = { element: number | undefined; candidates: number[] };

/** A needed group goes without being left: with nobody to serve it the branch ends by itself. */
function tightestDemand(search: CoverSearch): Demand | 'none' {
  let tightest: Demand | undefined;
  const offer = (element: number | undefined, who: readonly number[]) => {
    const candidates = who.filter((index) => canTake(search, index));
    if (!tightest || candidates.length < tightest.candidates.length) tightest = { element, candidates };
  };
  search.byGroup.forEach((who, group) => {
    if ((search.needed[group] ?? 0) > 0 && (search.served[group] ?? 0) === 0) offer(undefined, who);
  });
  search.byElement.forEach((who, element) => {
    if ((search.covered[element] ?? 0) === 0 && search.left[element] !== 1) offer(element, who);
  });
  return tightest ?? 'none';
}

/** Those that cover most come first: a good answer early cuts more. */
function inPromisingOrder(search: CoverSearch, candidates: readonly number[]): number[] {
  const gain = (index: number) =>
    (search.candidates[index]?.covers ?? []).filter((element) => search.covered[element] === 0).length;
  return candidates
    .map((index) => ({ index, gain: gain(index) }))
    .sort((a, b) => b.gain - a.gain || a.index - b.index)
    .map(({ index }) => index);
}

function keep(search: CoverSearch): void {
  const score: CoverScore = [search.leftCount, search.chosen.length, search.strain, search.change];
  const chosen = [...search.chosen].sort((a, b) => a - b);
  const difference = compareScores(score, search.best.score);
  if (difference < 0 || (difference === 0 && comesBefore(chosen, search.best.chosen)))
    search.best = { score, chosen };
}

function comesBefore(a: readonly number[], b: readonly number[]): boolean {
  for (let at = 0; at < a.length; at += 1) {
    const difference = (a[at] ?? 0) - (b[at] ?? 0);
    if (difference !== 0) return difference < 0;
  }
  return false;
}

function answerOf(search: CoverSearch, candidates: readonly CoverCandidate[]): CoverAnswer {
  const chosen = search.best.chosen.flatMap((index) => candidates[index] ?? []);
  const covered = new Set(chosen.flatMap((one) => one.covers));
  const [, , strain, change] = search.best.score;
  return {
    chosen: chosen.map((one) => one.key),
    uncovered: search.byElement.flatMap((_, element) => (covered.has(element) ? [] : [element])),
    strain,
    change,
  };
}
