import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findIsMinor } from '#lib/db/clients.ts';
import { listConsents } from '#lib/db/consents.ts';
import { findPhoneClient } from '#lib/db/phone-reads.ts';
import {
  CONSENT_VERSION,
  type ConsentState,
  type ConsentText,
  consentState,
  consentText,
} from '#lib/domain/consent.ts';
import { AppError } from '#lib/errors.ts';

export type ConsentAsked = {
  clientId: string;
  teamName: string;
  coachName: string;
  zone: string;
  text: ConsentText;
  health: ConsentState;
  share: boolean;
  /** Under 18 and asked on the client's own phone: a parent or guardian is named. */
  asksGuardian: boolean;
};

/** The text in force and how the client stands to it. */
export async function loadConsent(actor: Actor): Promise<ConsentAsked> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client is asked for consent.');
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findPhoneClient(tx, clientId);
    const text = consentText(CONSENT_VERSION, actor.teamName);
    if (!client || !text) throw new AppError('not-found', 'This client is not here.');
    const rows = await listConsents(tx, clientId);
    const { teamName, coachName, zone } = client;
    return {
      clientId,
      teamName,
      coachName,
      zone,
      text,
      health: consentState(rows, 'health-data'),
      share: consentState(rows, 'share-with-next-coach').state === 'given',
      asksGuardian: actor.role !== 'guardian' && (await findIsMinor(tx, clientId)),
    };
  });
}
