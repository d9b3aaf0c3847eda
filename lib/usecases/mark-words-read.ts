import type { Actor } from '#lib/auth/actor.ts';
import { markWordsRead as markInDb } from '#lib/db/check-in-words.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { AppError } from '#lib/errors.ts';

/** The client's own phone showed these words; ids of other people's words change nothing. */
export async function markWordsRead(actor: Actor, wordIds: readonly string[], now: Date): Promise<void> {
  const { clientId } = actor;
  if (!clientId || actor.role !== 'client')
    throw new AppError('forbidden', 'Only the client’s own phone marks words as read.');
  await withTeamPg(actor.scope, (tx) => markInDb(tx, { clientId, wordIds, at: now }));
}
