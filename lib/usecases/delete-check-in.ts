import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { findOwn, insertAfterCheckIn, isDeletedOwn, lockClient, markDeleted } from '#lib/db/check-ins.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { rebuildRollups } from '#lib/db/rollups.ts';
import { AppError } from '#lib/errors.ts';

/**
 * Takes back one's own check-in. The row stays, marked, for the coach and the export; its day is computed again without
 * it, and the checks run again, so that what it raised closes as after a correction. Said twice it is done once.
 */
export async function deleteCheckIn(actor: Actor, id: string, now: Date): Promise<void> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client deletes a check-in.');
  await withTeamPg(actor.scope, async (tx) => {
    await lockClient(tx, clientId);
    const own = await findOwn(tx, clientId, id);
    if (!own) {
      if (await isDeletedOwn(tx, clientId, id)) return;
      throw new AppError('not-found', 'This check-in is not here.');
    }
    if (own.replaced) {
      throw new AppError(
        'conflict',
        'This check-in was corrected. Delete its correction, the one that counts. Nothing was changed.',
      );
    }
    await markDeleted(tx, id, now);
    await rebuildRollups(tx, clientId, [own.date]);
    await insertAfterCheckIn(tx, { clientId, checkInId: id, change: 'deleted' });
    await insertAudit(tx, actor, { action: 'check-in-deleted', clientId, objectId: id, fields: [] });
  });
}
