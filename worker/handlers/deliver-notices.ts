import { now } from '#lib/clock.ts';
import { deliverNoticesJob } from '#lib/jobs/deliver-notices.ts';
import { deliverNotices } from '#lib/usecases/deliver-notices.ts';

export async function handleDeliverNotices(data: unknown): Promise<void> {
  const { teamId } = deliverNoticesJob.payload.parse(data);
  await deliverNotices(now(), teamId);
}
