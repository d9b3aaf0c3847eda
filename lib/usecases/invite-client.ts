import type { Actor } from '#lib/auth/actor.ts';
import { env } from '#lib/config/env.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { insertMail } from '#lib/db/outbox-mail.ts';
import { hashToken, makeEntryLink } from './make-entry-link.ts';

export type Invitation = { readonly url: string; readonly expiresAt: Date; readonly mailedTo: string | null };

/** A fresh link that signs the client's phone in; older ones stop working. Mailed too when there is an address. */
export async function inviteClient(actor: Actor, clientId: string, now: Date): Promise<Invitation> {
  return withTeamPg(actor.scope, (tx) => inviteClientIn(tx, actor, { clientId, mails: true }, now));
}

/** The same inside a transaction that does more; `mails` false: the link is only shown. */
export async function inviteClientIn(
  tx: TeamPg,
  actor: Actor,
  { clientId, mails }: { clientId: string; mails: boolean },
  now: Date,
): Promise<Invitation> {
  const { url, token, expiresAt, client } = await makeEntryLink(tx, {
    clientId,
    purpose: 'invitation',
    origin: env().PLUMBLINE_ORIGIN,
    at: now,
  });
  if (client.email && mails) {
    await insertMail(tx, {
      to: client.email,
      subject: `${client.coachName} asks you in`,
      text: `${client.name}, ${client.coachName} set up a place for your training diary.\n\nOpen this on your phone within 7 days. It works once:\n${url}\n`,
      clientId,
      dedupeKey: `invitation:${hashToken(token)}`,
      at: now,
    });
  }
  await insertAudit(tx, actor, { action: 'client-invited', clientId, fields: [] });
  return { url, expiresAt, mailedTo: mails ? client.email : null };
}
