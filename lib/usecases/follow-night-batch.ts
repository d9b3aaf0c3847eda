import { ledgerScope } from '#lib/db/ledger.ts';
import { logger } from '#lib/logger.ts';
import { type NightBatch, oweNextNights } from './owe-nights.ts';
import { type NightBatchResult, runNightBatch } from './run-night-batch.ts';
import { rememberUsualTimes } from './usual-times.ts';

const usualTimes = rememberUsualTimes();

/** One batch of the night, then the next owed night of the same clients, so that missed nights run in their order. */
export async function followNightBatch(batch: NightBatch, now: Date): Promise<NightBatchResult> {
  const result = await runNightBatch(ledgerScope(batch.teamId), batch, now, usualTimes);
  logger().info({ teamId: batch.teamId, localDate: batch.localDate, ...result }, 'night batch');
  await oweNextNights(batch, now);
  return result;
}
