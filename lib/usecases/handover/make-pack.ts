import type { Readable } from 'node:stream';
import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findMemberName, insertHandoverPack } from '#lib/db/handover-packs.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { PackOptions } from '#lib/handover/pack-content.ts';
import { writePack } from '#lib/handover/write-pack.ts';
import { openPackContent } from './open-pack-content.ts';
import { spool } from './spool.ts';

export type MadePack = { fileName: string; bytes: number; zip: Readable };

/**
 * Makes the handover pack of a client: everything read as of one moment, written to disk piece by piece, then handed out.
 * The line in the audit and the pack's own row stand only when the pack is whole.
 */
export async function makePack(
  actor: Actor,
  { clientId, options }: { clientId: string; options: PackOptions },
  now: Date,
): Promise<MadePack> {
  const { memberId } = actor;
  if (!memberId) throw new AppError('forbidden', 'Only a coach of the team makes a pack.');
  return withTeamPg(
    actor.scope,
    async (tx) => {
      const madeBy = (await findMemberName(tx, memberId)) ?? 'a coach';
      const content = await openPackContent(tx, { clientId, madeBy, options, now });
      const spooled = await spool((out) => writePack(content, options, out));
      try {
        const { period, parts, paper, words } = options;
        const packId = await insertHandoverPack(tx, {
          clientId,
          byId: memberId,
          why: words.why,
          options: { period, parts, paper, words },
          sha256: spooled.sha256,
        });
        await insertAudit(tx, actor, {
          action: 'client-exported',
          clientId,
          objectId: packId,
          fields: parts,
        });
      } catch (error) {
        await spooled.drop();
        throw error;
      }
      return {
        fileName: packFileName(clientId, localDateOf(now, content.history.client.zone)),
        bytes: spooled.bytes,
        zip: spooled.read(),
      };
    },
    { isolation: 'repeatable read' },
  );
}

/** A file name that says nothing about the person. */
function packFileName(clientId: string, localDate: string): string {
  return `handover-${clientId.slice(0, 8)}-${localDate}.zip`;
}
