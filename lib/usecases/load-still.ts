import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findStillKey } from '#lib/db/questions.ts';
import { AppError } from '#lib/errors.ts';
import { fileStore } from '#lib/files/file-store.ts';

/** A still as JPEG: to every member of the team, to a client (and guardian) only their own. */
export async function loadStill(actor: Actor, stillId: string): Promise<Uint8Array> {
  const missing = () => new AppError('not-found', 'This is not there, or not in your team.');
  if (!actor.memberId && !actor.clientId) throw missing();
  const of = actor.memberId ? null : actor.clientId;
  const key = await withTeamPg(actor.scope, (tx) => findStillKey(tx, stillId, of));
  const bytes = key === undefined ? undefined : await fileStore().read(key);
  if (!bytes) throw missing();
  return bytes;
}
