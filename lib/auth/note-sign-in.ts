import { findActor } from '#lib/db/accounts.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { teamScope, withTeam } from '#lib/db/client.ts';
import { forgetOldRequests } from '#lib/db/rate-limits.ts';

/** Every new session leaves one line in the audit of the person's team. */
export async function noteSignIn(userId: string): Promise<void> {
  await forgetOldRequests();
  const found = await findActor(userId);
  if (!found) return;
  await withTeam(teamScope(found.teamId), (tx) =>
    insertAudit(
      tx,
      { userId, role: found.role },
      { action: 'signed-in', clientId: found.clientId, fields: [] },
    ),
  );
}
