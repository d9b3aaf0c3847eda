import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { findBoardHead } from '#lib/db/board.ts';
import { withTeamPg } from '#lib/db/client.ts';
import type { ReasonAct } from '#lib/schemas/board.ts';
import { actOnClient } from './act-on-client.ts';
import { assertMember } from './assert-member.ts';

export type ActDone = {
  actId: string;
  /** One line for the folded row. */
  line: string;
  /** Whether the row leaves the board. */
  folds: boolean;
};

/**
 * Take, put aside, done or known on a client's row: on all its open reasons, or on the one that is named. All of it
 * is written in one transaction.
 */
export async function actOnReason(actor: Actor, input: ReasonAct, now: Date): Promise<ActDone> {
  const memberId = assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    const { today, zone } = await findBoardHead(tx, memberId, now);
    const actId = randomUUID();
    const done = await actOnClient(tx, input, { actor: { ...actor, memberId }, actId, today, zone, now });
    return { actId, ...done };
  });
}
