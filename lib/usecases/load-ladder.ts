import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { type LibraryChange, listLibraryChanges } from '#lib/db/library-audit.ts';
import { findLadder } from '#lib/db/library-ladder.ts';
import { findOutline, type Outline } from '#lib/db/library-outline.ts';
import { listPeopleOnLadder, type PersonOnLadder } from '#lib/db/library-people.ts';
import { listRungNames, listSwapChoices, type SwapChoice } from '#lib/db/library-swaps.ts';
import { STARTER_LIBRARY } from '#lib/library/library.ts';
import type { LadderState } from '#lib/planning/ladders/ladder-state.ts';
import { printOf } from './ladder-prints.ts';

export type LadderLoaded = {
  ladder: LadderState;
  /** The ladder as it is now, to send back with an edit of it. */
  base: string;
  people: PersonOnLadder[];
  outline: Outline;
  changes: LibraryChange[];
  /** Rungs of the same skill, to choose swaps from. */
  swapRungs: SwapChoice[];
  /** Names of the rungs that its openings ask for. */
  openingNames: Map<string, string>;
  /** Where shares of body weight come from, by the key that a drill names. */
  sources: Record<string, string>;
};

const CHANGES = 10;

/** One ladder with who stands on it; undefined: no such ladder here. */
export function loadLadder(actor: Actor, ladderId: string, now: Date): Promise<LadderLoaded | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const ladder = await findLadder(tx, ladderId, { lock: false });
    if (!ladder) return undefined;
    return {
      ladder,
      base: printOf(ladder),
      people: await listPeopleOnLadder(tx, ladderId, now),
      outline: await findOutline(tx),
      changes: await listLibraryChanges(tx, ladderId, CHANGES),
      swapRungs: await listSwapChoices(tx, ladderId),
      openingNames: await listRungNames(
        tx,
        ladder.openings.flatMap(({ needsAll }) => needsAll.flat()),
      ),
      sources: STARTER_LIBRARY.shareSources,
    };
  });
}
