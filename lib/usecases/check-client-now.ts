import { type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { lockClients } from '#lib/db/ledger.ts';
import { checkClientIn } from './check-client-in.ts';

/** All checks for one client at once, as of the client's today: after a check-in, and when a coach asks. */
export async function checkClientNow(scope: TeamScope, clientId: string, now: Date): Promise<number> {
  return withTeamPg(scope, async (tx) => {
    await lockClients(tx, [clientId]);
    return checkClientIn(tx, { clientId, now });
  });
}
