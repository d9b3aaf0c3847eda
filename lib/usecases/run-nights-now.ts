import { randomUUID } from 'node:crypto';
import { type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { listOwedNightsOf } from '#lib/db/ledger.ts';
import { forgetAttempts, hasClient, listNightClients } from '#lib/db/night-runs.ts';
import { AppError } from '#lib/errors.ts';
import { afterCheckInJob } from '#lib/jobs/after-check-in.ts';
import { enqueue } from '#lib/jobs/queue.ts';
import { checkClientNow } from './check-client-now.ts';
import { queueNights } from './owe-nights.ts';

export type NightsQueued = { clients: number };

/**
 * A coach asks for the nights now: all that the team owes, one client again, or everybody again. One client is checked
 * as of today at once; everybody by the worker. Throws `unavailable` when the queue does not answer; what is owed stays
 * owed.
 */
export async function runNightsNow(
  scope: TeamScope,
  input: { clientId?: string | undefined; everybody?: boolean | undefined },
  now: Date,
): Promise<NightsQueued> {
  const clientId = input.clientId ?? null;
  const everybody = await withTeamPg(scope, async (tx) => {
    if (clientId && !(await hasClient(tx, clientId)))
      throw new AppError('not-found', 'There is no such client.');
    await forgetAttempts(tx, clientId);
    return input.everybody ? await listNightClients(tx) : [];
  });
  const owed = await listOwedNightsOf(scope, clientId ? [clientId] : null, now);
  await queueNights(owed);
  for (const { id } of everybody)
    await enqueue(afterCheckInJob, { teamId: scope.teamId, clientId: id, checkInId: randomUUID() });
  if (clientId) await checkClientNow(scope, clientId, now);
  return {
    clients: new Set([...owed.map((night) => night.clientId), ...everybody.map(({ id }) => id)]).size,
  };
}
