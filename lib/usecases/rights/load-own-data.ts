import type { Actor } from '#lib/auth/actor.ts';
import { type AuditLineRow, listAuditLines } from '#lib/db/audit-lines.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { listConsents } from '#lib/db/consents.ts';
import { type ErasureAskRow, findErasureAsk } from '#lib/db/erasures.ts';
import { countKept } from '#lib/db/own-record.ts';
import { findPhoneClient } from '#lib/db/phone-reads.ts';
import { findRetention } from '#lib/db/retention.ts';
import { type ConsentState, consentState } from '#lib/domain/consent.ts';
import type { KeptCounts } from '#lib/domain/kept-record.ts';
import { AppError } from '#lib/errors.ts';

const LINES = 30;

export type OwnData = {
  clientId: string;
  teamName: string;
  coachName: string;
  zone: string;
  kept: KeptCounts;
  health: ConsentState;
  share: ConsentState;
  /** Who looked, took out or changed something, newest first. */
  lines: AuditLineRow[];
  asked: ErasureAskRow | undefined;
  years: number;
};

/** What is kept of the client who asks, who saw it, and how consent and deletion stand. */
export async function loadOwnData(actor: Actor): Promise<OwnData> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client has own data here.');
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findPhoneClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const consents = await listConsents(tx, clientId);
    const { teamName, coachName, zone } = client;
    return {
      clientId,
      teamName,
      coachName,
      zone,
      kept: await countKept(tx, clientId),
      health: consentState(consents, 'health-data'),
      share: consentState(consents, 'share-with-next-coach'),
      lines: await listAuditLines(tx, {
        actions: null,
        clientId,
        memberId: null,
        before: null,
        limit: LINES,
      }),
      asked: await findErasureAsk(tx, clientId),
      years: (await findRetention(tx)).years,
    };
  });
}
