import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { listConsents } from '#lib/db/consents.ts';
import { findGuardian } from '#lib/db/guardians.ts';
import { findPhoneClient } from '#lib/db/phone-reads.ts';
import { CONSENT_VERSION, consentState, consentText } from '#lib/domain/consent.ts';
import { guardianState, guardianText } from '#lib/domain/intake/guardian-text.ts';
import { AppError } from '#lib/errors.ts';
import { GUARDIAN_READS } from './decide-as-guardian.ts';

export type GuardianPage = {
  client: string;
  coach: string;
  teamName: string;
  zone: string;
  state: ReturnType<typeof guardianState>;
  /** When that was. */
  since: Date | null;
  about: string[];
  health: readonly string[];
  share: { words: string; given: boolean };
  version: string;
  /** The address that mails go to; null: none, so none are sent. */
  email: string | null;
};

/** What a parent or guardian reads, and how they stand to it. */
export async function loadGuardian(actor: Actor): Promise<GuardianPage> {
  return withTeamPg(actor.scope, async (tx) => {
    const guardian = await findGuardian(tx, { userId: actor.userId });
    const client = guardian && (await findPhoneClient(tx, guardian.clientId));
    const text = consentText(CONSENT_VERSION, actor.teamName);
    if (!guardian || !client || !text) throw new AppError('not-found', 'This is not here.');
    const consents = await listConsents(tx, guardian.clientId);
    const state = guardianState(guardian);
    return {
      client: client.name,
      coach: client.coachName,
      teamName: client.teamName,
      zone: client.zone,
      state,
      since: guardian.withdrawnAt ?? guardian.declinedAt ?? guardian.agreedAt,
      about: guardianText({ client: client.name, coach: client.coachName, team: client.teamName }),
      health: text.health,
      share: {
        words: text.share,
        given: consentState(consents, 'share-with-next-coach').state === 'given',
      },
      version: GUARDIAN_READS,
      email: guardian.email,
    };
  });
}
