import type { Readable } from 'node:stream';
import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { writePack } from '#lib/handover/write-pack.ts';
import { openPackContent } from '#lib/usecases/handover/open-pack-content.ts';
import { spool } from '#lib/usecases/handover/spool.ts';
import { WHOLE_RECORD } from '#lib/usecases/handover/whole-record.ts';

/** The client's own record, whole, without asking anybody. Notes that coaches wrote for themselves are not in it. */
export async function takeOwnRecord(actor: Actor, now: Date): Promise<{ fileName: string; zip: Readable }> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client has an own record here.');
  return withTeamPg(
    actor.scope,
    async (tx) => {
      const asked = { clientId, madeBy: actor.name, options: WHOLE_RECORD, now };
      const content = await openPackContent(tx, asked);
      const spooled = await spool((out) => writePack(content, WHOLE_RECORD, out));
      await insertAudit(tx, actor, { action: 'client-exported', clientId, fields: [] });
      return {
        fileName: `my-record-${localDateOf(now, content.history.client.zone)}.zip`,
        zip: spooled.read(),
      };
    },
    { isolation: 'repeatable read' },
  );
}
