import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findIsMinor } from '#lib/db/clients.ts';
import { listGuardians } from '#lib/db/guardians.ts';
import { findIntake, listSkillsToWant } from '#lib/db/intakes.ts';
import { findPhoneClient } from '#lib/db/phone-reads.ts';
import type { IntakeDraft } from '#lib/domain/intake/draft.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { intakeDraftSchema } from '#lib/schemas/intake.ts';
import { sentWhen } from './asked-anew.ts';

export type IntakeToFill = {
  clientId: string;
  coach: string;
  zone: string;
  year: number;
  draft: IntakeDraft;
  skills: string[];
  /** A parent or guardian is named already. */
  guardianNamed: boolean;
  under18: boolean;
  /** ISO; null: not sent yet. */
  sentAt: string | null;
};

/** The intake as the phone goes on with it. */
export async function loadIntake(actor: Actor, now: Date): Promise<IntakeToFill> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client is asked this.');
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findPhoneClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const intake = await findIntake(tx, clientId);
    const sentAt = await sentWhen(tx, intake, { clientId, zone: client.zone, now });
    return {
      clientId,
      coach: client.coachName,
      zone: client.zone,
      year: Number(localDateOf(now, client.zone).slice(0, 4)),
      draft: keptDraft(intake?.draft),
      skills: await listSkillsToWant(tx),
      guardianNamed: (await listGuardians(tx, clientId)).length > 0,
      under18: await findIsMinor(tx, clientId),
      sentAt: sentAt?.toISOString() ?? null,
    };
  });
}

/** A draft of an older form that is not understood any more is begun anew; what was sent is not touched by it. */
export function keptDraft(stored: unknown): IntakeDraft {
  return intakeDraftSchema.safeParse(stored ?? {}).data ?? {};
}
