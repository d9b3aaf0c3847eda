import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findSizedStill, insertStillFrame } from '#lib/db/still-frames.ts';
import { AppError } from '#lib/errors.ts';
import type { StillFrameBody } from '#lib/schemas/still-frame.ts';

/** Keeps where the joints were placed on a still. What it says is worked out again whenever it is shown. */
export function keepStillFrame(
  actor: Actor,
  stillId: string,
  body: StillFrameBody,
  now: Date,
): Promise<{ id: string }> {
  return withTeamPg(actor.scope, async (tx) => {
    const still = await findSizedStill(tx, stillId);
    if (!still) throw new AppError('not-found', 'This is not there, or not in your team.');
    const { clientId, storageKey } = still;
    const id = await insertStillFrame(tx, { clientId, storageKey, at: now }, body);
    await insertAudit(tx, actor, { action: 'joints-placed', clientId, objectId: id, fields: [] });
    return { id };
  });
}
