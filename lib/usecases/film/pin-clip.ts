import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { pinClip as setPin } from '#lib/db/clips.ts';
import { AppError } from '#lib/errors.ts';
import { assertMember } from '../assert-member.ts';

/** A clip stays for as long as the record does, or its days count again. */
export async function pinClip(
  actor: Actor,
  { clipId, pinned }: { clipId: string; pinned: boolean },
  now: Date,
): Promise<{ pinned: boolean }> {
  assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    const clientId = await setPin(tx, clipId, pinned ? now : null);
    if (!clientId) throw new AppError('not-found', 'This film is not there, or not in your team.');
    const action = pinned ? 'clip-kept' : 'clip-not-kept';
    await insertAudit(tx, actor, { action, clientId, objectId: clipId, fields: [] });
    return { pinned };
  });
}
