import type { Actor } from '#lib/auth/actor.ts';
import { env } from '#lib/config/env.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import {
  deletePhone,
  findNoticeChoice,
  insertPhone,
  type NoticeChoice,
  setMailNotice,
} from '#lib/db/notices.ts';
import { AppError } from '#lib/errors.ts';
import { mayBePublicHost } from '#lib/push/public-host.ts';
import type { PushPhone } from '#lib/schemas/notice.ts';

/** Phones and browsers of one client that are told. */
const MOST_PHONES = 10;

/** Mails the client when a coach answers, or does not any more. */
export async function chooseMailNotice(actor: Actor, on: boolean, now: Date): Promise<void> {
  await asClient(actor, async (tx, clientId, choice) => {
    if (on && !choice.email)
      throw new AppError(
        'conflict',
        'No e-mail address of yours is known: ask your coach to add it, then switch this on.',
      );
    await setMailNotice(tx, { clientId, on, at: now });
  });
}

/** Tells the client on this phone from now on. */
export async function addNoticePhone(actor: Actor, { endpoint, keys }: PushPhone, now: Date): Promise<void> {
  const { protocol, hostname } = new URL(endpoint);
  if (env().PLUMBLINE_PUSH_LOCAL !== '1' && (protocol !== 'https:' || !mayBePublicHost(hostname))) {
    const message = 'must be an https address on a public host, as browsers give it';
    throw new AppError('invalid', `endpoint: ${message}`, { fields: { endpoint: message } });
  }
  await asClient(actor, (tx, clientId) =>
    insertPhone(tx, { clientId, endpoint, ...keys, at: now }, MOST_PHONES),
  );
}

/** Tells nobody on this phone any more; a phone of somebody else stays as it is. */
export async function dropNoticePhone(actor: Actor, endpoint: string): Promise<void> {
  await asClient(actor, (tx, clientId) => deletePhone(tx, { clientId, endpoint }));
}

async function asClient(
  actor: Actor,
  work: (tx: TeamPg, clientId: string, choice: NoticeChoice) => Promise<void>,
): Promise<void> {
  const { clientId } = actor;
  if (!clientId || actor.role !== 'client')
    throw new AppError('forbidden', 'Only a client chooses how they are told of answers.');
  await withTeamPg(actor.scope, async (tx) => {
    const choice = await findNoticeChoice(tx, clientId);
    if (!choice) throw new AppError('not-found', 'This client is not here.');
    await work(tx, clientId, choice);
  });
}
