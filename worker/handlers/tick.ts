import { now } from '#lib/clock.ts';
import { tickJob } from '#lib/jobs/tick.ts';
import { applyDueStandings } from '#lib/usecases/apply-due-standings.ts';
import { deliverMails } from '#lib/usecases/deliver-mails.ts';
import { deliverNotices } from '#lib/usecases/deliver-notices.ts';
import { deliverOutbox } from '#lib/usecases/deliver-outbox.ts';
import { oweNights } from '#lib/usecases/owe-nights.ts';
import { announceAged } from '#lib/usecases/rights/announce-aged.ts';
import { eraseDueClients } from '#lib/usecases/rights/erase-client.ts';
import { writeMorningMails } from '#lib/usecases/write-morning-mails.ts';

export async function handleTick(data: unknown): Promise<void> {
  tickJob.payload.parse(data);
  await eraseDueClients(now()); // first: nothing more is done with who is to be forgotten
  await deliverOutbox(now());
  await announceAged(now());
  await applyDueStandings(now()); // before the nights: who left today owes none
  await oweNights(now());
  await writeMorningMails(now());
  await deliverMails(now()); // last: these wait for strangers' servers
  await deliverNotices(now());
}
