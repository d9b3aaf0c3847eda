import { now } from '#lib/clock.ts';
import { afterCheckInJob } from '#lib/jobs/after-check-in.ts';
import { checkAfterCheckIn } from '#lib/usecases/check-after-check-in.ts';

export async function handleAfterCheckIn(data: unknown): Promise<void> {
  await checkAfterCheckIn(afterCheckInJob.payload.parse(data), now());
}
