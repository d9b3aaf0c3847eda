import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { setLeaves } from '#lib/db/team-members.ts';
import { AppError } from '#lib/errors.ts';
import type { PreparedAct } from '#lib/schemas/team.ts';
import { presentMember } from './change-role.ts';

/** Says which kinds of act an assistant does without approval. Answers with those of before. */
export async function giveLeave(
  actor: Actor,
  input: { memberId: string; acts: PreparedAct[] },
  now: Date,
): Promise<{ before: string[] }> {
  return withTeamPg(actor.scope, async (tx) => {
    const member = await presentMember(tx, input.memberId, now);
    if (member.role !== 'assistant') {
      const message = 'only an assistant needs leave: coaches and leads act as themselves';
      throw new AppError('conflict', message, { fields: { acts: message } });
    }
    await setLeaves(tx, member.id, input.acts);
    await insertAudit(tx, actor, { action: 'leave-given', objectId: member.id, fields: input.acts });
    return { before: member.leaves };
  });
}
