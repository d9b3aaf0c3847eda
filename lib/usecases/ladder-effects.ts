import type { TeamPg } from '#lib/db/client.ts';
import { findLadder } from '#lib/db/library-ladder.ts';
import { listPeopleOnLadder } from '#lib/db/library-people.ts';
import { type KeptSwaps, listKeptSwaps, listLadderOrder, listRungNames } from '#lib/db/library-swaps.ts';
import { listSwapRungs } from '#lib/db/swaps.ts';
import type { LadderState } from '#lib/planning/ladders/ladder-state.ts';
import { refreshSwaps } from '#lib/planning/ladders/refresh-swaps.ts';
import { type LadderTouch, ladderTouches } from '#lib/views/ladders/ladder-touches.ts';

export type LadderChanged = { before: LadderState; after: LadderState };
export type LadderEffects = {
  /** The ladder edited, first, and those whose swaps follow from it. */
  changed: LadderChanged[];
  touches: LadderTouch[];
};

/** What an edit of one ladder comes to: swaps that are found otherwise, here and on other ladders, and whom all of it touches. */
export async function effectsOf(tx: TeamPg, edited: LadderChanged, now: Date): Promise<LadderEffects> {
  const kept = await listKeptSwaps(tx);
  const changed = await withSwaps(tx, edited, kept);
  const names = await listRungNames(tx, namedIn(changed));
  for (const rung of changed.flatMap(({ after }) => after.rungs))
    if (!names.has(rung.id)) names.set(rung.id, rung.name);
  const touches: LadderTouch[] = [];
  for (const { before, after } of changed)
    touches.push(...ladderTouches(before, after, await listPeopleOnLadder(tx, before.id, now), names));
  return { changed, touches };
}

async function withSwaps(
  tx: TeamPg,
  { before, after }: LadderChanged,
  kept: KeptSwaps[],
): Promise<LadderChanged[]> {
  const fresh = refreshSwaps({
    before,
    after,
    rungs: await listSwapRungs(tx),
    ladderOrder: await listLadderOrder(tx),
    kept: new Map([
      ...kept.map((one) => [one.rungId, one.swaps] as const),
      ...after.rungs.map((rung) => [rung.id, rung.swaps] as const),
    ]),
  });
  const others = new Set(kept.filter((one) => fresh.has(one.rungId)).map((one) => one.ladderId));
  others.delete(before.id);
  const changed = [{ before, after: refreshed(after, fresh) }];
  for (const ladderId of others) {
    const other = await findLadder(tx, ladderId, { lock: true });
    if (other) changed.push({ before: other, after: refreshed(other, fresh) });
  }
  return changed;
}

function refreshed(state: LadderState, fresh: ReturnType<typeof refreshSwaps>): LadderState {
  return {
    ...state,
    rungs: state.rungs.map((rung) => ({ ...rung, swaps: fresh.get(rung.id) ?? rung.swaps })),
  };
}

function namedIn(changed: readonly LadderChanged[]): string[] {
  const states = changed.flatMap(({ before, after }) => [before, after]);
  return [
    ...new Set(
      states.flatMap(({ openings, rungs }) => [
        ...openings.flatMap(({ needsAll }) => needsAll.flat()),
        ...rungs.flatMap((rung) => rung.swaps.map((swap) => swap.insteadId)),
      ]),
    ),
  ];
}
