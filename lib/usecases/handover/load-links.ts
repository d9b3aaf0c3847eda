import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { isConsentWithdrawn, listConsents } from '#lib/db/consents.ts';
import { findErasureAsk } from '#lib/db/erasures.ts';
import { findNameAndZone, type LinkRow, listHandoverLinks } from '#lib/db/handover-links.ts';
import { type ConsentState, consentState } from '#lib/domain/consent.ts';

export type ClientLinks = {
  id: string;
  name: string;
  zone: string;
  share: ConsentState;
  /** Why no new link can be made; null: one can. */
  shut: 'consent' | 'deletion' | null;
  links: LinkRow[];
};

/** The links to a client's record, and whether another may be made. Undefined: nobody of this team. */
export function loadLinks(actor: Actor, clientId: string, now: Date): Promise<ClientLinks | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findNameAndZone(tx, clientId);
    if (!client) return undefined;
    const withdrawn = await isConsentWithdrawn(tx, clientId);
    const asked = await findErasureAsk(tx, clientId);
    return {
      id: clientId,
      ...client,
      share: consentState(await listConsents(tx, clientId), 'share-with-next-coach'),
      shut: withdrawn ? 'consent' : asked ? 'deletion' : null,
      links: await listHandoverLinks(tx, clientId, now),
    };
  });
}
