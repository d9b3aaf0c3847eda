import { now } from '#lib/clock.ts';
import { deliverMailsJob } from '#lib/jobs/deliver-mails.ts';
import { deliverMails } from '#lib/usecases/deliver-mails.ts';

export async function handleDeliverMails(data: unknown): Promise<void> {
  deliverMailsJob.payload.parse(data);
  await deliverMails(now());
}
