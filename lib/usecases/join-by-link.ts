import { insertAudit } from '#lib/db/audit.ts';
import { teamScope, withTeamPg } from '#lib/db/client.ts';
import { takeEntryLink } from '#lib/db/entry-links.ts';
import { lockGuardian } from '#lib/db/guardians.ts';
import { markJoined } from '#lib/db/members.ts';
import { hashToken } from './make-entry-link.ts';

/** Uses an entry link up. The user to sign in, or nobody: unknown, used and out-of-date links are all the same. */
export async function joinByLink(token: string, now: Date): Promise<{ userId: string } | undefined> {
  const used = await takeEntryLink(hashToken(token), now);
  if (!used) return undefined;
  const { teamId, userId, clientId, guardianId } = used;
  if (clientId) {
    await withTeamPg(teamScope(teamId), async (tx) => {
      await markJoined(tx, clientId, now);
      await insertAudit(tx, { userId, role: 'client' }, { action: 'entry-link-used', clientId, fields: [] });
    });
  }
  if (guardianId) {
    await withTeamPg(teamScope(teamId), async (tx) => {
      const guardian = await lockGuardian(tx, { guardianId });
      const about = { clientId: guardian?.clientId ?? null, objectId: guardianId, fields: [] };
      await insertAudit(tx, { userId, role: 'guardian' }, { action: 'entry-link-used', ...about });
    });
  }
  return { userId };
}
