import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import type { MemberRole } from '#lib/db/members.ts';
import { hashOf, insertPerson, type NewPerson } from './make-team.ts';

/** Adds a coach, an assistant or a second lead to the actor's team. */
export async function addMember(
  actor: Pick<Actor, 'scope' | 'userId' | 'role'>,
  input: NewPerson & { role: MemberRole },
  now: Date,
): Promise<{ memberId: string; userId: string }> {
  const passwordHash = await hashOf(input);
  return withTeamPg(actor.scope, async (tx) => {
    const ids = await insertPerson(tx, { ...input, passwordHash }, now);
    await insertAudit(tx, actor, { action: 'member-added', objectId: ids.memberId, fields: ['role'] });
    return ids;
  });
}
