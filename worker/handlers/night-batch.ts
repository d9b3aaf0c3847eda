import { now } from '#lib/clock.ts';
import { nightBatchJob } from '#lib/jobs/night-batch.ts';
import { followNightBatch } from '#lib/usecases/follow-night-batch.ts';

export async function handleNightBatch(data: unknown): Promise<void> {
  await followNightBatch(nightBatchJob.payload.parse(data), now());
}
