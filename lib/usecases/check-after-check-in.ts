import { ledgerScope } from '#lib/db/ledger.ts';
import { checkClientNow } from './check-client-now.ts';

/** The job after a check-in: names a team by id, as the outbox of that team did. */
export async function checkAfterCheckIn(
  job: { teamId: string; clientId: string },
  now: Date,
): Promise<number> {
  return checkClientNow(ledgerScope(job.teamId), job.clientId, now);
}
