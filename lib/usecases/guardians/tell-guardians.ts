import { env } from '#lib/config/env.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { listGuardians } from '#lib/db/guardians.ts';
import { insertMail } from '#lib/db/outbox-mail.ts';
import { findPhoneClient } from '#lib/db/phone-reads.ts';
import { guardianMail, isForGuardians, type ToldPain } from '#lib/domain/intake/guardian-mail.ts';
import { guardianState } from '#lib/domain/intake/guardian-text.ts';

type Told = { clientId: string; key: string; told: ToldPain; now: Date };

/**
 * Under 18: whoever agreed is told of danger signs and of pain of 4 or more, once for each `key` (a check-in), in the
 * transaction that keeps it. Nobody is told of somebody of age.
 */
export async function tellGuardians(tx: TeamPg, { clientId, key, told, now }: Told): Promise<void> {
  if (!isForGuardians(told)) return;
  const client = await findPhoneClient(tx, clientId);
  if (!client?.under18) return;
  const mail = guardianMail(told, {
    client: client.name,
    coach: client.coachName,
    link: `${env().PLUMBLINE_ORIGIN}/guardian`,
  });
  if (!mail) return;
  for (const guardian of await listGuardians(tx, clientId)) {
    if (guardian.email === null || guardianState(guardian) !== 'agreed') continue;
    await insertMail(tx, {
      ...mail,
      to: guardian.email,
      clientId,
      dedupeKey: `guardian:${key}:${guardian.id}`,
      at: now,
    });
  }
}
