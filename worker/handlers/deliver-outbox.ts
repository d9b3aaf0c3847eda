import { deliverOutboxJob } from '#lib/jobs/deliver-outbox.ts';
import { deliverOutbox } from '#lib/usecases/deliver-outbox.ts';

export async function handleDeliverOutbox(data: unknown): Promise<void> {
  deliverOutboxJob.payload.parse(data);
  await deliverOutbox();
}
