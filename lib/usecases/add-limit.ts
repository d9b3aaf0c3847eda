import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { insertLimit } from '#lib/db/limits.ts';
import { fillSwaps } from '#lib/db/swaps.ts';
import { AppError } from '#lib/errors.ts';
import type { LimitInput } from '#lib/schemas/limit.ts';
import { assertMember } from './assert-member.ts';

/** Keeps what is ruled out or reduced for a client. Phone, plan and checks go by it from its first day. */
export async function addLimit(
  actor: Actor,
  input: { clientId: string; limit: LimitInput },
  now: Date,
): Promise<{ limitId: string }> {
  assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    if (!(await findClient(tx, input.clientId))) throw new AppError('not-found', 'This client is not here.');
    // Teams made before there were swaps get theirs with the first limit that needs them.
    await fillSwaps(tx);
    const limitId = await insertLimit(tx, { ...input.limit, clientId: input.clientId, now });
    await insertAudit(tx, actor, {
      action: 'limit-added',
      clientId: input.clientId,
      objectId: limitId,
      fields: [],
    });
    return { limitId };
  });
}
