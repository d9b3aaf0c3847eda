import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { writeMorningChoice } from '#lib/db/morning-mails.ts';
import type { MorningMailInput } from '#lib/schemas/reply.ts';
import { assertMember } from './assert-member.ts';

/** A member's own choice: whether a morning mail comes, at which hour, and where their mornings are. */
export async function chooseMorningMail(actor: Actor, choice: MorningMailInput): Promise<void> {
  const memberId = assertMember(actor);
  await withTeamPg(actor.scope, async (tx) => {
    await writeMorningChoice(tx, memberId, choice);
    await insertAudit(tx, actor, {
      action: 'morning-mail-chosen',
      objectId: memberId,
      fields: ['morning_mail', 'morning_mail_hour', 'zone'],
    });
  });
}
