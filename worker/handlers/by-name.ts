import { afterCheckInJob } from '#lib/jobs/after-check-in.ts';
import { checkClipJob } from '#lib/jobs/check-clip.ts';
import { deliverMailsJob } from '#lib/jobs/deliver-mails.ts';
import { deliverNoticesJob } from '#lib/jobs/deliver-notices.ts';
import { deliverOutboxJob } from '#lib/jobs/deliver-outbox.ts';
import { nightBatchJob } from '#lib/jobs/night-batch.ts';
import { tickJob } from '#lib/jobs/tick.ts';
import { handleAfterCheckIn } from './after-check-in.ts';
import { handleCheckClip } from './check-clip.ts';
import { handleDeliverMails } from './deliver-mails.ts';
import { handleDeliverNotices } from './deliver-notices.ts';
import { handleDeliverOutbox } from './deliver-outbox.ts';
import { handleNightBatch } from './night-batch.ts';
import { handleTick } from './tick.ts';

/** Every job and who does it. */
export const HANDLERS: ReadonlyMap<string, (data: unknown) => Promise<void>> = new Map([
  [afterCheckInJob.name, handleAfterCheckIn],
  [checkClipJob.name, handleCheckClip],
  [deliverMailsJob.name, handleDeliverMails],
  [deliverNoticesJob.name, handleDeliverNotices],
  [deliverOutboxJob.name, handleDeliverOutbox],
  [nightBatchJob.name, handleNightBatch],
  [tickJob.name, handleTick],
]);
