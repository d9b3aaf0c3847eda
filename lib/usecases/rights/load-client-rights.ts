import type { Actor } from '#lib/auth/actor.ts';
import { may } from '#lib/auth/permissions.ts';
import { type AuditLineRow, listAuditLines } from '#lib/db/audit-lines.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { listConsents } from '#lib/db/consents.ts';
import { type ErasureAskRow, findErasureAsk } from '#lib/db/erasures.ts';
import { countKept } from '#lib/db/own-record.ts';
import { type CameFrom, findCameFrom } from '#lib/db/take-in.ts';
import { listTeamMembers } from '#lib/db/team-members.ts';
import { type ConsentState, consentState } from '#lib/domain/consent.ts';
import type { KeptCounts } from '#lib/domain/kept-record.ts';

export type ClientRights = {
  id: string;
  name: string;
  zone: string;
  kept: KeptCounts;
  health: ConsentState;
  share: ConsentState;
  asked: ErasureAskRow | undefined;
  cameFrom: CameFrom | undefined;
  /** Who looked and what was taken out: for those who keep the records. */
  lines: AuditLineRow[];
};

/** How a client's consent stands, what is kept, whether deletion was asked; undefined: no such client here. */
export function loadClientRights(
  actor: Actor,
  clientId: string,
  now: Date,
): Promise<ClientRights | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findClient(tx, clientId);
    if (!client) return undefined;
    const consents = await listConsents(tx, clientId);
    const members = await listTeamMembers(tx, now);
    return {
      id: clientId,
      name: client.name,
      zone: members.find((member) => member.id === actor.memberId)?.zone ?? 'UTC',
      kept: await countKept(tx, clientId),
      health: consentState(consents, 'health-data'),
      share: consentState(consents, 'share-with-next-coach'),
      asked: await findErasureAsk(tx, clientId),
      cameFrom: await findCameFrom(tx, clientId),
      lines: may(actor.role, 'keep-records')
        ? await listAuditLines(tx, { actions: null, clientId, memberId: null, before: null, limit: 20 })
        : [],
    };
  });
}
