import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { insertStill } from '#lib/db/questions.ts';
import { fileStore } from '#lib/files/file-store.ts';
import { stillKey } from '#lib/files/still-key.ts';
import { stillPicture } from '#lib/files/still-picture.ts';
import { assertWithin, lockClip } from './do-look.ts';

type Taken = { clipId: string; atSeconds: number; bytes: Uint8Array };

/**
 * Keeps one moment of a film as a still on which joints can be placed: decoded and written anew as every picture that
 * comes in. The file is written last, inside the transaction.
 */
export async function takeStill(actor: Actor, taken: Taken, now: Date): Promise<{ id: string }> {
  const { clipId, atSeconds, bytes } = taken;
  const { jpeg, width, height } = await stillPicture(bytes);
  return withTeamPg(actor.scope, async (tx) => {
    const clip = await lockClip(tx, clipId);
    assertWithin(clip, atSeconds);
    const { clientId } = clip;
    const id = randomUUID();
    const storageKey = stillKey(tx.teamId, id);
    const row = { id, clientId, questionId: null, clipId, atSeconds, storageKey, width, height };
    await insertStill(tx, { ...row, bytes: jpeg.byteLength, at: now });
    await insertAudit(tx, actor, { action: 'still-taken', clientId, objectId: id, fields: [] });
    await fileStore().write(storageKey, jpeg);
    return { id };
  });
}
