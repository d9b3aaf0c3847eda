import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { insertLinkUser } from '#lib/db/accounts.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { lockGuardian, setGuardianUser } from '#lib/db/guardians.ts';
import { insertMail } from '#lib/db/outbox-mail.ts';
import { findPhoneClient } from '#lib/db/phone-reads.ts';
import { AppError } from '#lib/errors.ts';
import { assertMember } from '../assert-member.ts';
import { makeGuardianLink } from './make-guardian-link.ts';

const LIFE_MS = 7 * 24 * 3_600_000;

export type GuardianLink = { url: string; expiresAt: Date; mailedTo: string | null };

/** The one link of a parent or guardian that works, once, for 7 days; mailed where there is an address. */
export async function linkGuardian(actor: Actor, guardianId: string, now: Date): Promise<GuardianLink> {
  assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    const guardian = await lockGuardian(tx, { guardianId });
    const client = guardian && (await findPhoneClient(tx, guardian.clientId));
    if (!guardian || !client || client.standing === 'left')
      throw new AppError('not-found', 'This parent or guardian is not there, or not in your team.');
    if (guardian.userId === null) {
      const userId = randomUUID();
      await insertLinkUser(tx, { id: userId, name: guardian.name, at: now });
      await setGuardianUser(tx, guardianId, userId);
    }
    const { url, tokenHash, expiresAt } = await makeGuardianLink(tx, {
      guardianId,
      lifeMs: LIFE_MS,
      at: now,
    });
    const { clientId, email } = guardian;
    if (email !== null)
      await insertMail(tx, {
        to: email,
        subject: `${client.coachName} asks you as parent or guardian of ${client.name}`,
        text: `${guardian.name}, ${client.name} wants to train with ${client.coachName} and is under 18. Training does not begin before you agree.\n\nOpen this within 7 days to read what it is about and say yes or no. It works once, and there is no password:\n${url}\n\nIf you are not the parent or guardian of ${client.name}, leave it: nothing happens.\n`,
        clientId,
        dedupeKey: `guardian-link:${tokenHash}`,
        at: now,
      });
    await insertAudit(tx, actor, {
      action: 'guardian-link-made',
      clientId,
      objectId: guardianId,
      fields: [],
    });
    return { url, expiresAt, mailedTo: email };
  });
}
