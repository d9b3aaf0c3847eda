import type { TeamPg } from '#lib/db/client.ts';
import { listGuardians } from '#lib/db/guardians.ts';
import { findIntake } from '#lib/db/intakes.ts';
import type { PhoneClient } from '#lib/db/phone-reads.ts';
import { guardiansAgree } from '#lib/domain/intake/guardian-text.ts';
import { isAskedAnew, sentWhen } from './asked-anew.ts';

/** What comes before training; both false or null once it is done. */
export type StartOfToday = {
  /** The intake was not sent: `begun` where some of it is filled in. */
  intake: 'none' | 'begun' | null;
  /** Under 18, and no parent or guardian agrees: who was named, in words. */
  guardian: string | null;
};

export async function startOfToday(
  tx: TeamPg,
  clientId: string,
  { standing, under18, zone }: Pick<PhoneClient, 'standing' | 'under18' | 'zone'>,
  now: Date,
): Promise<StartOfToday> {
  const asking = { clientId, zone, now };
  const intake = await findIntake(tx, clientId);
  const starts = standing === 'invited' || standing === 'starting';
  const waits = starts
    ? (await sentWhen(tx, intake, asking)) === null
    : await isAskedAnew(tx, intake, asking);
  return {
    intake: waits ? (intake?.draft ? 'begun' : 'none') : null,
    guardian: under18 ? await waitsForGuardian(tx, clientId) : null,
  };
}

/** Under 18: whose yes training and tests wait for, in words; null: nobody's. */
export async function waitsForGuardian(tx: TeamPg, clientId: string): Promise<string | null> {
  const guardians = await listGuardians(tx, clientId);
  if (guardiansAgree(guardians)) return null;
  return guardians.map(({ name }) => name).join(' or ') || 'a parent or guardian';
}
