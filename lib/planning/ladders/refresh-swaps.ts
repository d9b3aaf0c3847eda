import { type Swap, type SwapRung, swapsOf } from '../swaps.ts';
import { drillOf, type LadderState, liveRungs, type SwapState } from './ladder-state.ts';

type Change = {
  before: LadderState;
  after: LadderState;
  /** The rungs in use of the whole team before the edit. */
  rungs: readonly SwapRung[];
  /** Ladders of the team in their order, as the choice between equals asks it. */
  ladderOrder: readonly string[];
  /** The swaps that a rung has now, those of `after` among them. */
  kept: ReadonlyMap<string, readonly SwapState[]>;
};

/**
 * The swaps that an edit of one ladder changes, by rung, on any ladder of the team: worked out again as for a new team,
 * and laid over what is kept, so that what a coach added, took away or put in another order stays. Rungs whose swaps stay as
 * they are are left out.
 */
export function refreshSwaps({ before, after, rungs, ladderOrder, kept }: Change): Map<string, SwapState[]> {
  const elsewhere = rungs.filter((rung) => rung.ladderId !== before.id);
  const found = (own: LadderState) =>
    byRung(swapsOf(inOrder([...elsewhere, ...swapRungsOf(own)], ladderOrder)));
  const [was, is] = [found(before), found(after)];
  const changed = new Map<string, SwapState[]>();
  for (const rungId of new Set([...was.keys(), ...is.keys(), ...kept.keys()])) {
    const now = kept.get(rungId) ?? [];
    const next = laidOver(now, was.get(rungId) ?? [], is.get(rungId) ?? []);
    if (keysOf(next) !== keysOf(now)) changed.set(rungId, next);
  }
  return changed;
}

/** The rungs of a ladder that swaps are looked for among: those in use. */
function swapRungsOf(state: LadderState): SwapRung[] {
  if (state.retired) return [];
  return liveRungs(state).flatMap((rung, index) => {
    const drill = drillOf(state, rung);
    if (!drill) return [];
    const { measure, weights, equipment, family } = drill;
    return {
      id: rung.id,
      ladderId: state.id,
      part: state.part,
      skill: state.skill,
      position: index + 1,
      name: rung.name,
      family: family ?? state.family,
      measure,
      weights,
      equipment,
    };
  });
}

function inOrder(rungs: readonly SwapRung[], ladderOrder: readonly string[]): SwapRung[] {
  const places = new Map(ladderOrder.map((id, index) => [id, index]));
  const at = ({ ladderId }: SwapRung) => places.get(ladderId) ?? ladderOrder.length;
  return [...rungs].sort((a, b) => at(a) - at(b) || a.position - b.position);
}

function byRung(swaps: readonly Swap[]): Map<string, SwapState[]> {
  const found = new Map<string, SwapState[]>();
  for (const { rungId, position: _position, ...swap } of swaps)
    found.set(rungId, [...(found.get(rungId) ?? []), swap]);
  return found;
}

/** Tissue by tissue: the new list where nobody touched the old one; else the kept one without what went, with what came at its end. */
function laidOver(
  kept: readonly SwapState[],
  was: readonly SwapState[],
  is: readonly SwapState[],
): SwapState[] {
  const tissues = [...new Set([...kept, ...is].map((swap) => swap.tissue))].sort();
  return tissues.flatMap((tissue) => {
    const of = (swaps: readonly SwapState[]) => swaps.filter((swap) => swap.tissue === tissue);
    const [mine, old, fresh] = [of(kept), of(was), of(is)];
    if (keysOf(mine) === keysOf(old)) return fresh.map((swap) => mine.find(sameAs(swap)) ?? swap);
    return [
      ...mine.filter((swap) => !old.some(sameAs(swap)) || fresh.some(sameAs(swap))),
      ...fresh.filter((swap) => !old.some(sameAs(swap)) && !mine.some(sameAs(swap))),
    ];
  });
}

function keyOf({ tissue, insteadId, support }: SwapState): string {
  return `${tissue} ${insteadId} ${support ?? ''}`;
}

function sameAs(swap: SwapState): (other: SwapState) => boolean {
  return (other) => keyOf(other) === keyOf(swap);
}

function keysOf(swaps: readonly SwapState[]): string {
  return [...swaps]
    .sort((a, b) => (a.tissue < b.tissue ? -1 : a.tissue > b.tissue ? 1 : 0))
    .map(keyOf)
    .join(',');
}
