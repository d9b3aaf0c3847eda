import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { lockClient, setZone } from '#lib/db/check-ins.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { AppError } from '#lib/errors.ts';

/**
 * The client's zone follows the phone. Days that were told keep their local date and the zone they were told in; a night
 * that was run is not run again.
 */
export async function followZone(actor: Actor, zone: string): Promise<void> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client’s phone says where it is.');
  await withTeamPg(actor.scope, async (tx) => {
    const client = await lockClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    if (client.zone === zone) return;
    await setZone(tx, clientId, zone);
    await insertAudit(tx, actor, { action: 'zone-followed', clientId, objectId: clientId, fields: ['zone'] });
  });
}
