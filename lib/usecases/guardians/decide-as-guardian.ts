import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { lockClient } from '#lib/db/check-ins.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { endConsents, insertConsent } from '#lib/db/consents.ts';
import { type GuardianRow, lockGuardian, saveGuardianDecision } from '#lib/db/guardians.ts';
import { CONSENT_VERSION, type ConsentKind } from '#lib/domain/consent.ts';
import { GUARDIAN_VERSION } from '#lib/domain/intake/guardian-text.ts';
import { AppError } from '#lib/errors.ts';
import type { GuardianDecision } from '#lib/schemas/guardian.ts';
import { withdrawConsentIn } from '../rights/withdraw-consent.ts';

/** The version that a guardian reads: both texts in one. */
export const GUARDIAN_READS = `${GUARDIAN_VERSION}/${CONSENT_VERSION}`;

/**
 * A parent or guardian says yes or no by their own link. A yes is a consent of its own in their name, which takes the
 * place of what was said on the client's phone; a no ends what holds. The same again changes nothing.
 */
export async function decideAsGuardian(actor: Actor, decided: GuardianDecision, now: Date): Promise<void> {
  if (decided.version !== GUARDIAN_READS)
    throw new AppError('conflict', 'The text has changed since it was opened. Read it again.', {
      fields: { version: 'is not the text in force' },
    });
  await withTeamPg(actor.scope, async (tx) => {
    const guardian = await ownGuardian(tx, actor);
    if (decided.decision === 'agree') return agree(tx, { actor, guardian, share: decided.share, now });
    if (guardian.declinedAt !== null) return;
    await say(tx, { actor, guardian, now }, 'declined');
    // What was agreed to on the client's phone ends too: without a parent or guardian it does not hold.
    await withdrawConsentIn(tx, { actor, clientId: guardian.clientId, now });
  });
}

/** A yes by the page of consents: what they read there is the text in force. */
export function agreeAsGuardian(actor: Actor, { share }: { share: boolean }, now: Date): Promise<void> {
  return decideAsGuardian(actor, { decision: 'agree', version: GUARDIAN_READS, share }, now);
}

/** Takes a yes back: nothing more is taken in, nothing is checked. */
export async function withdrawAsGuardian(actor: Actor, now: Date): Promise<void> {
  await withTeamPg(actor.scope, async (tx) => {
    const guardian = await ownGuardian(tx, actor);
    if (guardian.agreedAt !== null && guardian.withdrawnAt === null)
      await say(tx, { actor, guardian, now }, 'withdrawn');
    await withdrawConsentIn(tx, { actor, clientId: guardian.clientId, now });
  });
}

async function ownGuardian(tx: TeamPg, actor: Actor): Promise<GuardianRow> {
  const guardian = actor.role === 'guardian' ? await lockGuardian(tx, { userId: actor.userId }) : undefined;
  if (!guardian || !(await lockClient(tx, guardian.clientId)))
    throw new AppError('forbidden', 'Only a parent or guardian decides this, by their own link.');
  return guardian;
}

type Decides = { actor: Actor; guardian: GuardianRow; now: Date };

async function agree(
  tx: TeamPg,
  { actor, guardian, share, now }: Decides & { share: boolean },
): Promise<void> {
  if (guardian.agreedAt !== null && guardian.withdrawnAt === null && guardian.declinedAt === null) return;
  const { clientId } = guardian;
  const by = `${guardian.name}, parent or guardian`;
  const kinds: ConsentKind[] = share ? ['health-data', 'share-with-next-coach'] : ['health-data'];
  for (const kind of kinds) {
    await endConsents(tx, { clientId, kind, by: null, at: now });
    await insertConsent(tx, { clientId, kind, version: CONSENT_VERSION, by, at: now });
    await insertAudit(tx, actor, { action: 'consent-given', clientId, objectId: kind, fields: [] });
  }
  await say(tx, { actor, guardian, now }, 'agreed');
}

async function say(
  tx: TeamPg,
  { actor, guardian, now }: Decides,
  decision: 'agreed' | 'declined' | 'withdrawn',
): Promise<void> {
  const { clientId } = guardian;
  await saveGuardianDecision(tx, { guardianId: guardian.id, decision, version: GUARDIAN_VERSION, at: now });
  await insertAudit(tx, actor, {
    action: `guardian-${decision}`,
    clientId,
    objectId: guardian.id,
    fields: [],
  });
}
