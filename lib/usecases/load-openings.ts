import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findLadder } from '#lib/db/library-ladder.ts';
import { type LibraryRung, listPlannableRungs } from '#lib/db/plans.ts';
import type { LadderState } from '#lib/planning/ladders/ladder-state.ts';
import { printOf } from './ladder-prints.ts';

export type OpeningsLoaded = {
  ladder: LadderState;
  /** The ladder as it is now, to send back with an edit of it. */
  base: string;
  rungs: LibraryRung[];
};

/** A ladder and every rung its openings can ask for; undefined: no such ladder here. */
export function loadOpenings(actor: Actor, ladderId: string): Promise<OpeningsLoaded | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const ladder = await findLadder(tx, ladderId, { lock: false });
    return ladder && { ladder, base: printOf(ladder), rungs: await listPlannableRungs(tx) };
  });
}
