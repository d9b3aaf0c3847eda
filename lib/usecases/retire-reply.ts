import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findKeptReply, lockSameName, retireKeptReply } from '#lib/db/kept-replies.ts';
import { AppError } from '#lib/errors.ts';

/** Takes a kept reply out of the lists, or back into them; what was sent with it stays as it is. */
export async function retireReply(
  actor: Actor,
  { replyId, retired }: { replyId: string; retired: boolean },
  now: Date,
): Promise<void> {
  await withTeamPg(actor.scope, async (tx) => {
    const kept = await findKeptReply(tx, replyId);
    if (!kept) throw new AppError('not-found', 'This kept reply is not there, or not in your team.');
    if (!retired && (await lockSameName(tx, { name: kept.name, id: replyId })))
      throw new AppError(
        'conflict',
        `Another kept reply is called “${kept.name}” by now. Change its name first, then take this one back.`,
      );
    await retireKeptReply(tx, replyId, retired ? now : null);
    await insertAudit(tx, actor, {
      action: retired ? 'kept-reply-retired' : 'kept-reply-taken-back',
      objectId: replyId,
      fields: [],
    });
  });
}
