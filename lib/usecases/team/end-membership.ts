import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { endCoversOf } from '#lib/db/covers.ts';
import { listClientIdsOf } from '#lib/db/moves.ts';
import { findTeamMember, setMemberLeft } from '#lib/db/team-members.ts';
import { AppError } from '#lib/errors.ts';
import { assertLeadLeft, presentMember } from './change-role.ts';
import { moveClientsIn, undoMovesIn } from './move-clients.ts';

type Going = { memberId: string; clientsTo: string | null; note: string };

/**
 * A member leaves: their clients go to another coach in the same act, every session of theirs ends at once. What they
 * wrote stays with their name.
 */
export async function endMembership(actor: Actor, input: Going, now: Date): Promise<{ moveIds: string[] }> {
  return withTeamPg(actor.scope, async (tx) => {
    await assertLeadLeft(tx, { memberId: input.memberId, role: null });
    const member = await presentMember(tx, input.memberId, now);
    const clientIds = await listClientIdsOf(tx, member.id);
    if (clientIds.length > 0 && !input.clientsTo) {
      const message = `say who takes the clients of ${member.name} (${clientIds.length})`;
      throw new AppError('invalid', `clientsTo: ${message}`, { fields: { clientsTo: message } });
    }
    const moveIds =
      input.clientsTo && clientIds.length > 0
        ? await moveClientsIn(tx, actor, { clientIds, toId: input.clientsTo, note: input.note }, now)
        : [];
    await endCoversOf(tx, member);
    await setMemberLeft(tx, member, now);
    await insertAudit(tx, actor, { action: 'member-left', objectId: member.id, fields: [] });
    return { moveIds };
  });
}

/** Takes a leaving back: the member may sign in again, and the clients that were moved with it return. */
export async function resumeMembership(
  actor: Actor,
  input: { memberId: string; moveIds: string[] },
  now: Date,
): Promise<void> {
  await withTeamPg(actor.scope, async (tx) => {
    const member = await findTeamMember(tx, input.memberId, now);
    if (!member?.leftAt) throw new AppError('not-found', 'Nobody of this id has left your team.');
    await setMemberLeft(tx, member, null);
    if (input.moveIds.length > 0) await undoMovesIn(tx, actor, input.moveIds, now);
    await insertAudit(tx, actor, { action: 'member-returned', objectId: member.id, fields: [] });
  });
}
