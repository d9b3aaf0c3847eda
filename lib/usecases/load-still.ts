import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findStill } from '#lib/db/questions.ts';
import { AppError } from '#lib/errors.ts';
import { fileStore } from '#lib/files/file-store.ts';
import { noteRead } from './rights/note-read.ts';

/** A still as JPEG: to every member of the team, to a client (and guardian) only their own. */
export async function loadStill(actor: Actor, stillId: string): Promise<Uint8Array> {
  const missing = () => new AppError('not-found', 'This is not there, or not in your team.');
  if (!actor.memberId && !actor.clientId) throw missing();
  const of = actor.memberId ? null : actor.clientId;
  const still = await withTeamPg(actor.scope, (tx) => findStill(tx, stillId, of));
  const bytes = still && (await fileStore().read(still.key));
  if (!bytes) throw missing();
  void noteRead(actor, still.clientId, 'picture'); // nobody waits for it
  return bytes;
}
