import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import type { MemberRole } from '#lib/db/members.ts';
import { findTeamMember, lockMembers, setLeaves, setRole, type TeamMember } from '#lib/db/team-members.ts';
import { AppError } from '#lib/errors.ts';

/** Gives a member another role. A team keeps a lead; an assistant has no clients of their own. Answers with the role before. */
export async function changeRole(
  actor: Actor,
  input: { memberId: string; role: MemberRole },
  now: Date,
): Promise<{ before: MemberRole }> {
  return withTeamPg(actor.scope, async (tx) => {
    await assertLeadLeft(tx, input);
    const member = await presentMember(tx, input.memberId, now);
    if (input.role === 'assistant' && member.clients > 0) throw hasClients(member);
    await setRole(tx, member.id, input.role);
    if (input.role !== 'assistant') await setLeaves(tx, member.id, []);
    await insertAudit(tx, actor, { action: 'role-changed', objectId: member.id, fields: ['role'] });
    return { before: member.role };
  });
}

/** Refuses when nobody would lead the team any more; `role` null: the member leaves. */
export async function assertLeadLeft(
  tx: TeamPg,
  change: { memberId: string; role: MemberRole | null },
): Promise<void> {
  const members = await lockMembers(tx);
  const others = members.filter(({ id, role }) => role === 'lead' && id !== change.memberId);
  if (change.role === 'lead' || others.length > 0) return;
  if (members.every(({ id, role }) => id !== change.memberId || role !== 'lead')) return;
  const message = 'a team needs a lead: make somebody else a lead first';
  throw new AppError('conflict', `role: ${message}`, { fields: { role: message } });
}

/** A member who has not left. */
export async function presentMember(tx: TeamPg, memberId: string, now: Date): Promise<TeamMember> {
  const member = await findTeamMember(tx, memberId, now);
  if (member && member.leftAt === null) return member;
  throw new AppError('not-found', 'This person is not in your team, or has left it.');
}

function hasClients({ name, clients }: TeamMember): AppError {
  const message = `an assistant has no clients: move those of ${name} (${clients}) to a coach first`;
  return new AppError('conflict', `role: ${message}`, { fields: { role: message } });
}
