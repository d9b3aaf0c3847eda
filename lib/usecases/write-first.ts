import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { insertWords, lockAct, lockWrittenTo, type WrittenTo } from '#lib/db/recipients.ts';
import { withName } from '#lib/domain/reply-fields.ts';
import { AppError } from '#lib/errors.ts';
import type { WordsFirstInput } from '#lib/schemas/reply.ts';
import type { ActDone } from './act-on-reason.ts';
import { assertFilled } from './assert-filled.ts';
import { assertMember } from './assert-member.ts';
import { tellClient } from './tell-client.ts';

/**
 * A coach's words to one client or to several, each sent as its own, with [name] filled in. All or none: somebody who
 * has left, or a field not filled in, stops it before anything is written. The same act again sends nothing twice.
 */
export async function writeFirst(actor: Actor, input: WordsFirstInput, now: Date): Promise<ActDone> {
  const { actId } = input;
  const act = { actId, memberId: assertMember(actor), at: now };
  return withTeamPg(actor.scope, async (tx) => {
    const before = await lockAct(tx, actId);
    if (before.length > 0) return { actId, line: sentTo(before), folds: false };
    const clients = await toWrite(tx, input.clientIds);
    await assertFilled(tx, { text: withName(input.text, ''), keptReplyId: input.keptReplyId });
    const words = clients.map(({ id, name }) => ({ clientId: id, text: withName(input.text, name) }));
    for (const { id, clientId } of await insertWords(tx, words, act)) {
      await tellClient(tx, { clientId, what: 'words', id, by: actor.name }, now);
      await insertAudit(tx, actor, { action: 'words-written', clientId, objectId: id, fields: ['text'] });
    }
    return { actId, line: sentTo(clients), folds: false };
  });
}

async function toWrite(tx: TeamPg, ids: readonly string[]): Promise<WrittenTo[]> {
  const clients = await lockWrittenTo(tx, ids);
  if (clients.length < ids.length)
    throw new AppError(
      'not-found',
      'One of these clients is not there, or not in your team. Read the page again.',
    );
  const left = clients.filter((client) => client.standing === 'left').map((client) => client.name);
  if (left.length === 0) return clients;
  const message = `${left.join(', ')} ${left.length === 1 ? 'has' : 'have'} left and ${left.length === 1 ? 'is' : 'are'} not written to: take the tick away`;
  throw new AppError('invalid', `clientIds: ${message}`, { fields: { clientIds: message } });
}

function sentTo(clients: readonly { name: string }[]): string {
  const [first] = clients;
  return clients.length === 1 && first
    ? `Sent to ${first.name}.`
    : `Sent to ${clients.length} clients, each as words of their own.`;
}
