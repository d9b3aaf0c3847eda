import { now } from '#lib/clock.ts';
import { tickJob } from '#lib/jobs/tick.ts';
import { logger } from '#lib/logger.ts';
import { applyDueStandings } from '#lib/usecases/apply-due-standings.ts';
import { deliverMails } from '#lib/usecases/deliver-mails.ts';
import { deliverNotices } from '#lib/usecases/deliver-notices.ts';
import { deliverOutbox } from '#lib/usecases/deliver-outbox.ts';
import { handOnClips } from '#lib/usecases/film/hand-on-clips.ts';
import { sweepClips } from '#lib/usecases/film/sweep-clips.ts';
import { oweNights } from '#lib/usecases/owe-nights.ts';
import { announceAged } from '#lib/usecases/rights/announce-aged.ts';
import { eraseDueClients } from '#lib/usecases/rights/erase-client.ts';
import { sayLeftOutNights } from '#lib/usecases/say-left-out-nights.ts';
import { writeMorningMails } from '#lib/usecases/write-morning-mails.ts';

const STEPS: readonly ((at: Date) => Promise<unknown>)[] = [
  eraseDueClients, // first: nothing more is done with who is to be forgotten
  deliverOutbox,
  handOnClips,
  sweepClips,
  announceAged,
  applyDueStandings, // before the nights: who left today owes none
  oweNights,
  sayLeftOutNights,
  writeMorningMails,
  deliverMails, // last: these wait for strangers' servers
  deliverNotices,
];

/** All that is due by now. One step that fails keeps none of the others from being done; then the job has failed. */
export async function handleTick(data: unknown): Promise<void> {
  tickJob.payload.parse(data);
  const failed: string[] = [];
  for (const step of STEPS) {
    try {
      await step(now());
    } catch (error) {
      failed.push(step.name);
      logger().error({ step: step.name, error }, 'a step of the tick failed');
    }
  }
  if (failed.length > 0) throw new Error(`the tick could not do ${failed.join(', ')}`);
}
