import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { insertKeptReply, lockSameName, markAnswerKept, updateKeptReply } from '#lib/db/kept-replies.ts';
import { AppError } from '#lib/errors.ts';
import type { KeptReplyInput } from '#lib/schemas/reply.ts';
import { assertMember } from './assert-member.ts';

/** Keeps a reply under a name of its own, or changes one. Names are one a team, capitals aside. */
export async function keepReply(actor: Actor, input: KeptReplyInput, now: Date): Promise<{ id: string }> {
  const kept = { name: input.name, text: input.text, memberId: assertMember(actor), at: now };
  return withTeamPg(actor.scope, async (tx) => {
    if (await lockSameName(tx, { name: input.name, id: input.id ?? null })) {
      const message = `another kept reply is called “${input.name}”: choose another name, or change that one`;
      throw new AppError('invalid', `name: ${message}`, { fields: { name: message } });
    }
    if (input.id !== undefined && !(await updateKeptReply(tx, input.id, kept)))
      throw new AppError('not-found', 'This kept reply is not there, or not in your team.');
    const id = input.id ?? (await insertKeptReply(tx, kept));
    if (input.answerId) await markAnswerKept(tx, input.answerId);
    await insertAudit(tx, actor, {
      action: input.id === undefined ? 'reply-kept' : 'kept-reply-changed',
      objectId: id,
      fields: ['name', 'text'],
    });
    return { id };
  });
}
