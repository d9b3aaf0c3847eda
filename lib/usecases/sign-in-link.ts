import { env } from '#lib/config/env.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { teamScope, withTeamPg } from '#lib/db/client.ts';
import { listClientsWithEmail, listGuardiansWithEmail } from '#lib/db/entry-links.ts';
import { lockGuardian } from '#lib/db/guardians.ts';
import { insertMail } from '#lib/db/outbox-mail.ts';
import { makeGuardianLink } from './guardians/make-guardian-link.ts';
import { hashToken, makeEntryLink } from './make-entry-link.ts';

/** Mails a link to every client, parent and guardian with this address. Says nothing: nobody may learn who trains here. */
export async function mailSignInLink(email: string, now: Date): Promise<void> {
  await mailGuardians(email, now);
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

const GUARDIAN_LIFE_MS = 15 * 60_000;

async function mailGuardians(email: string, now: Date): Promise<void> {
  for (const { teamId, guardianId } of await listGuardiansWithEmail(email)) {
    await withTeamPg(teamScope(teamId), async (tx) => {
      const guardian = await lockGuardian(tx, { guardianId });
      if (!guardian?.email) return;
      const { clientId, name } = guardian;
      const { url, tokenHash } = await makeGuardianLink(tx, {
        guardianId,
        lifeMs: GUARDIAN_LIFE_MS,
        at: now,
      });
      await insertMail(tx, {
        to: guardian.email,
        subject: 'Your link as parent or guardian',
        text: `${name}, open this within 15 minutes. It works once:\n${url}\n\nIf you did not ask for it, leave it: nothing happens.\n`,
        clientId,
        dedupeKey: `guardian-link:${tokenHash}`,
        at: now,
      });
      await insertAudit(
        tx,
        { userId: null, role: 'system' },
        { action: 'guardian-link-made', clientId, objectId: guardianId, fields: [] },
      );
    });
  }
}
