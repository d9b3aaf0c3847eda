import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { insertCheckInSeen } from '#lib/db/check-in-words.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { assertCheckInCounts } from './assert-check-in-counts.ts';
import { assertMember } from './assert-member.ts';

/** Says that a coach looked at one check-in; the client sees by whom and when. Twice is the same as once. */
export async function markCheckInSeen(
  actor: Actor,
  at: { clientId: string; checkInId: string },
  now: Date,
): Promise<void> {
  const by = { memberId: assertMember(actor), at: now };
  await withTeamPg(actor.scope, async (tx) => {
    await assertCheckInCounts(tx, at);
    const markId = await insertCheckInSeen(tx, at, by);
    if (markId === undefined) return;
    await insertAudit(tx, actor, {
      action: 'check-in-seen',
      clientId: at.clientId,
      objectId: at.checkInId,
      fields: [],
    });
  });
}
