import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClipFile } from '#lib/db/clips.ts';
import { AppError } from '#lib/errors.ts';
import { fileStore } from '#lib/files/file-store.ts';
import type { ByteRange } from '#lib/files/store-types.ts';
import { noteRead } from '../rights/note-read.ts';

export type OpenedClip = {
  etag: string;
  bytes: number;
  open: (range?: ByteRange) => Promise<ReadableStream<Uint8Array>>;
};

/** A clip that is ready: to every member of the team, to a client (and guardian) only their own. */
export async function openClip(actor: Actor, clipId: string): Promise<OpenedClip> {
  const missing = () => new AppError('not-found', 'This is not there, or not in your team.');
  if (!actor.memberId && !actor.clientId) throw missing();
  const of = actor.memberId ? null : actor.clientId;
  const file = await withTeamPg(actor.scope, (tx) => findClipFile(tx, clipId, of));
  if (!file) throw missing();
  void noteRead(actor, file.clientId, 'film'); // nobody waits for it
  const open = async (range?: ByteRange) => {
    const stream = await fileStore().open(file.storageKey, range);
    if (!stream) throw missing();
    return stream;
  };
  return { etag: `"${clipId}-${file.bytes}"`, bytes: file.bytes, open };
}
