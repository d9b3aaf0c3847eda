import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { insertSeenMark } from '#lib/db/act-records.ts';
import { findActClient, insertActEvents, lockOpenReasons } from '#lib/db/acts.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { AppError } from '#lib/errors.ts';
import type { ActDone } from './act-on-reason.ts';
import { assertMember } from './assert-member.ts';

/** Says on the client's phone that a coach looked. Changes no reason: the row stays until it is answered. */
export async function markSeen(actor: Actor, input: { clientId: string }, now: Date): Promise<ActDone> {
  const by = { memberId: assertMember(actor), at: now };
  return withTeamPg(actor.scope, async (tx) => {
    if (!(await findActClient(tx, input.clientId)))
      throw new AppError('not-found', 'This is not there, or not in your team.');
    const [lead] = await lockOpenReasons(tx, input.clientId);
    const seenMarkId = await insertSeenMark(tx, input.clientId, by);
    const actId = lead ? randomUUID() : seenMarkId;
    if (lead) {
      const body = {
        actId,
        clientId: input.clientId,
        act: 'seen',
        words: '',
        before: null,
        after: null,
        seenMarkId,
      };
      await insertActEvents(tx, [{ reasonId: lead.id, what: 'seen', level: null, body }], by);
    }
    await insertAudit(tx, actor, {
      action: 'client-seen',
      clientId: input.clientId,
      objectId: seenMarkId,
      fields: [],
    });
    return { actId, line: 'Seen. The client sees it on the phone.', folds: false };
  });
}
