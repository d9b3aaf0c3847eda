import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findPhoneClient } from '#lib/db/phone-reads.ts';
import { startOfToday } from './start-of-today.ts';

/** Who has agreed goes on to the questions of the start where those wait, else to Today. */
export async function homeAfterConsent(actor: Actor, now: Date): Promise<'/intake' | '/today'> {
  const { clientId } = actor;
  if (!clientId || actor.role !== 'client') return '/today';
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findPhoneClient(tx, clientId);
    const start = client && (await startOfToday(tx, clientId, client, now));
    return start?.intake ? '/intake' : '/today';
  });
}
