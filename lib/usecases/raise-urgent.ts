import { URGENT_KINDS } from '#lib/checks/urgency.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { logger } from '#lib/logger.ts';
import { checkClientIn } from './check-client-in.ts';

/**
 * Danger signs and high pain reach the board with the check-in itself. A fault in a check must not cost the client the
 * check-in: then it is kept without the reason, said in the log, and the waiting outbox row runs the checks again.
 */
export async function raiseUrgent(tx: TeamPg, clientId: string, now: Date): Promise<void> {
  await tx.client.query('savepoint before_urgent');
  try {
    await checkClientIn(tx, { clientId, now, only: URGENT_KINDS });
    await tx.client.query('release savepoint before_urgent');
  } catch (error) {
    await tx.client.query('rollback to savepoint before_urgent');
    logger().error({ error, clientId }, 'urgent checks failed at submit; the outbox repeats them');
  }
}
