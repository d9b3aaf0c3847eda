import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { endLimit as endStoredLimit, listLimits } from '#lib/db/limits.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { assertMember } from './assert-member.ts';

/** Ends a limit from today on, the client's own day: yesterday was its last. The record of it stays. */
export async function endLimit(
  actor: Actor,
  input: { clientId: string; limitId: string },
  now: Date,
): Promise<void> {
  assertMember(actor);
  await withTeamPg(actor.scope, async (tx) => {
    const client = await findClient(tx, input.clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const lastDay = addDays(localDateOf(now, client.zone), -1);
    const held = (await listLimits(tx, input.clientId)).find(({ id }) => id === input.limitId);
    if (held?.told && held.endedAt === null)
      throw new AppError(
        'conflict',
        'This holds because of an answer at the start: it ends with a clinician’s word. Record that word on the page about the start.',
      );
    if (!(await endStoredLimit(tx, { ...input, lastDay, now })))
      throw new AppError('conflict', 'This limit is over already, or not here. Read the page again.');
    await insertAudit(tx, actor, {
      action: 'limit-ended',
      clientId: input.clientId,
      objectId: input.limitId,
      fields: [],
    });
  });
}
