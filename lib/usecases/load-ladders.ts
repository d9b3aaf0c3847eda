import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findOutline, type Outline } from '#lib/db/library-outline.ts';
import { countPeopleByLadder } from '#lib/db/library-people.ts';

export type LaddersLoaded = { outline: Outline; people: Map<string, number> };

/** The team's skills, parts and ladders, and how many clients stand on each ladder. */
export function loadLadders(actor: Actor, now: Date): Promise<LaddersLoaded> {
  return withTeamPg(actor.scope, async (tx) => ({
    outline: await findOutline(tx),
    people: await countPeopleByLadder(tx, now),
  }));
}
