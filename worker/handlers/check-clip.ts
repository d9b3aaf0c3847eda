import { now } from '#lib/clock.ts';
import { checkClipJob } from '#lib/jobs/check-clip.ts';
import { checkClip } from '#lib/usecases/film/check-clip.ts';

export async function handleCheckClip(data: unknown): Promise<void> {
  await checkClip(checkClipJob.payload.parse(data), now());
}
