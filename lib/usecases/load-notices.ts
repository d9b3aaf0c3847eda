import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findNoticeChoice, type NoticeChoice } from '#lib/db/notices.ts';
import { vapidKeys } from '#lib/push/vapid-keys.ts';

/** How a client is told of answers, with the key that a phone subscribes with; undefined for anybody but a client. */
export async function loadNotices(actor: Actor): Promise<(NoticeChoice & { pushKey: string }) | undefined> {
  const { clientId } = actor;
  if (!clientId || actor.role !== 'client') return undefined;
  const choice = await withTeamPg(actor.scope, (tx) => findNoticeChoice(tx, clientId));
  return choice && { ...choice, pushKey: vapidKeys().publicKey };
}
