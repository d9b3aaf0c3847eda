import { insertAudit } from '#lib/db/audit.ts';
import { teamScope, withTeamPg } from '#lib/db/client.ts';
import { takeEntryLink } from '#lib/db/entry-links.ts';
import { markJoined } from '#lib/db/members.ts';
import { hashToken } from './make-entry-link.ts';

/** Uses an entry link up. The user to sign in, or nobody: unknown, used and out-of-date links are all the same. */
export async function joinByLink(token: string, now: Date): Promise<{ userId: string } | undefined> {
  const used = await takeEntryLink(hashToken(token), now);
  if (!used) return undefined;
  const { teamId, userId, clientId } = used;
  if (clientId) {
    await withTeamPg(teamScope(teamId), async (tx) => {
      await markJoined(tx, clientId, now);
      await insertAudit(tx, { userId, role: 'client' }, { action: 'entry-link-used', clientId, fields: [] });
    });
  }
  return { userId };
}
