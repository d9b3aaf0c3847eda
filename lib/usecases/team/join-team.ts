import { insertAudit } from '#lib/db/audit.ts';
import { teamScope, withTeamPg } from '#lib/db/client.ts';
import { findInvitedTeam, setInvitationMember, takeInvitation } from '#lib/db/invitations.ts';
import { hashToken } from '../make-entry-link.ts';
import { hashOf, insertPerson } from '../make-team.ts';

type Joining = { token: string; name: string; password: string; zone: string };

/**
 * Makes the member that an invitation asks for and uses it up, in one transaction. Nobody: unknown, used, withdrawn
 * and out-of-date links are all the same.
 */
export async function joinTeam(input: Joining, now: Date): Promise<{ userId: string } | undefined> {
  const tokenHash = hashToken(input.token);
  const teamId = await findInvitedTeam(tokenHash, now);
  if (!teamId) return undefined;
  const passwordHash = await hashOf({ ...input, email: '' });
  return withTeamPg(teamScope(teamId), async (tx) => {
    const asked = await takeInvitation(tx, tokenHash, now);
    if (!asked) return undefined;
    const { name, zone } = input;
    const person = { name, zone, passwordHash, email: asked.email, role: asked.role };
    const { userId, memberId } = await insertPerson(tx, person, now);
    await setInvitationMember(tx, asked.id, memberId);
    await insertAudit(
      tx,
      { userId, role: asked.role },
      { action: 'member-joined', objectId: memberId, fields: ['role'] },
    );
    return { userId };
  });
}
