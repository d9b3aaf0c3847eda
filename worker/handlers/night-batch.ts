import { now } from '#lib/clock.ts';
import { nightBatchJob } from '#lib/jobs/night-batch.ts';
import { metrics } from '#lib/metrics.ts';
import { followNightBatch } from '#lib/usecases/follow-night-batch.ts';

export async function handleNightBatch(data: unknown): Promise<void> {
  const { done, failed } = await followNightBatch(nightBatchJob.payload.parse(data), now());
  const { nightClients } = metrics();
  nightClients.inc({ outcome: 'checked' }, done);
  nightClients.inc({ outcome: 'failed' }, failed);
}
