import { env } from '#lib/config/env.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { teamScope, withTeamPg } from '#lib/db/client.ts';
import { listClientsWithEmail } from '#lib/db/entry-links.ts';
import { insertMail } from '#lib/db/outbox-mail.ts';
import { hashToken, makeEntryLink } from './make-entry-link.ts';

/** Mails a sign-in link to every client with this address. Says nothing: nobody may learn who trains here. */
export async function mailSignInLink(email: string, now: Date): Promise<void> {
  for (const { teamId, clientId } of await listClientsWithEmail(email)) {
    await withTeamPg(teamScope(teamId), async (tx) => {
      const link = { clientId, purpose: 'sign-in', origin: env().PLUMBLINE_ORIGIN, at: now } as const;
      const { url, token, client } = await makeEntryLink(tx, link);
      await insertMail(tx, {
        to: client.email ?? email,
        subject: 'Your link to sign in',
        text: `${client.name}, open this on your phone within 15 minutes. It works once:\n${url}\n\nIf you did not ask for it, leave it: nothing happens.\n`,
        clientId,
        dedupeKey: `sign-in:${hashToken(token)}`,
        at: now,
      });
      await insertAudit(
        tx,
        { userId: null, role: 'system' },
        { action: 'sign-in-link-mailed', clientId, fields: [] },
      );
    });
  }
}
