import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { updateStanding } from '#lib/db/clients.ts';
import type { Standing } from '#lib/domain/vocabulary.ts';
import { AppError } from '#lib/errors.ts';

/** Changes where a client stands with the coach: in training, paused, left and so on. */
export async function changeStanding(
  actor: Actor,
  input: { clientId: string; standing: Standing },
  now: Date,
): Promise<void> {
  if (!actor.memberId) throw new AppError('forbidden', 'Only a coach changes the standing of a client.');
  await withTeamPg(actor.scope, async (tx) => {
    const changed = await updateStanding(tx, input.clientId, { standing: input.standing, now });
    if (!changed) throw new AppError('not-found', 'This client is not here.');
    await insertAudit(tx, actor, {
      action: 'standing-changed',
      clientId: input.clientId,
      fields: ['standing'],
    });
  });
}
