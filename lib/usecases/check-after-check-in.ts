import { withTeamPg } from '#lib/db/client.ts';
import { ledgerScope, lockClients } from '#lib/db/ledger.ts';
import { listUnchecked, markSent, noteFailure } from '#lib/db/outbox.ts';
import { checkClientIn } from './check-client-in.ts';
import { errorInWords } from './error-in-words.ts';

/**
 * The job after a check-in: names a team by id, as the outbox of that team did. What waited for these checks is marked in
 * their transaction: read before them, so that what comes meanwhile waits for the next.
 */
export async function checkAfterCheckIn(
  { teamId, clientId }: { teamId: string; clientId: string },
  now: Date,
): Promise<number> {
  const scope = ledgerScope(teamId);
  try {
    return await withTeamPg(scope, async (tx) => {
      await lockClients(tx, [clientId]);
      const waited = await listUnchecked(tx, clientId);
      const changed = await checkClientIn(tx, { clientId, now });
      await markSent(tx, waited, now);
      return changed;
    });
  } catch (error) {
    await withTeamPg(scope, async (tx) =>
      noteFailure(tx, await listUnchecked(tx, clientId), errorInWords(error)),
    ).catch(() => undefined); // the database itself is away: the row waits as it is
    throw error;
  }
}
