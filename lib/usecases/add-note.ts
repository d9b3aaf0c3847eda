import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClient, insertNote } from '#lib/db/clients.ts';
import { AppError } from '#lib/errors.ts';

/** Keeps a note that only coaches of the team see. */
export async function addNote(
  actor: Actor,
  input: { clientId: string; text: string },
  now: Date,
): Promise<void> {
  const { memberId } = actor;
  if (!memberId) throw new AppError('forbidden', 'Only a coach writes notes.');
  await withTeamPg(actor.scope, async (tx) => {
    if (!(await findClient(tx, input.clientId))) throw new AppError('not-found', 'This client is not here.');
    await insertNote(tx, { clientId: input.clientId, byId: memberId, text: input.text, now });
    await insertAudit(tx, actor, { action: 'note-added', clientId: input.clientId, fields: [] });
  });
}
