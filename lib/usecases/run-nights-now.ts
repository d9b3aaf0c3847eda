import { type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { listOwedNightsOf } from '#lib/db/ledger.ts';
import { forgetAttempts, hasClient } from '#lib/db/night-runs.ts';
import { AppError } from '#lib/errors.ts';
import { checkClientNow } from './check-client-now.ts';
import { queueNights } from './owe-nights.ts';

export type NightsQueued = { clients: number };

/**
 * A coach asks for the nights now: all that the team owes, or one client again. One client is also checked as of
 * today. Throws `unavailable` when the queue does not answer; what is owed stays owed.
 */
export async function runNightsNow(
  scope: TeamScope,
  input: { clientId?: string | undefined },
  now: Date,
): Promise<NightsQueued> {
  const clientId = input.clientId ?? null;
  await withTeamPg(scope, async (tx) => {
    if (clientId && !(await hasClient(tx, clientId)))
      throw new AppError('not-found', 'There is no such client.');
    await forgetAttempts(tx, clientId);
  });
  const owed = await listOwedNightsOf(scope, clientId ? [clientId] : null, now);
  await queueNights(owed);
  if (clientId) await checkClientNow(scope, clientId, now);
  return { clients: new Set(owed.map((night) => night.clientId)).size };
}
