import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { endHandoverLink } from '#lib/db/handover-links.ts';
import { AppError } from '#lib/errors.ts';

/** Ends a link at once: whoever has it open sees nothing more. */
export async function endLink(
  actor: Actor,
  link: { clientId: string; linkId: string },
  now: Date,
): Promise<void> {
  await withTeamPg(actor.scope, async (tx) => {
    if (!(await endHandoverLink(tx, { ...link, at: now })))
      throw new AppError('not-found', 'This link is not there, or not in your team.');
    const { clientId, linkId } = link;
    await insertAudit(tx, actor, { action: 'link-revoked', clientId, objectId: linkId, fields: [] });
  });
}
