import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClient, insertClinicianWord } from '#lib/db/clients.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { ClinicianWordInput } from '#lib/schemas/client.ts';

/** Keeps what a clinician said about a client; the checks read it on the next run. */
export async function recordClinicianWord(
  actor: Actor,
  input: { clientId: string; word: ClinicianWordInput },
  now: Date,
): Promise<void> {
  const { memberId } = actor;
  if (!memberId) throw new AppError('forbidden', 'Only a coach records a clinician’s word.');
  await withTeamPg(actor.scope, async (tx) => {
    const client = await findClient(tx, input.clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const today = localDateOf(now, client.zone);
    if (input.word.date > today) {
      throw new AppError('invalid', `date: must be today (${today}) or earlier`, {
        fields: { date: `must be today (${today}) or earlier` },
      });
    }
    await insertClinicianWord(tx, { ...input.word, clientId: input.clientId, byId: memberId });
    await insertAudit(tx, actor, { action: 'clinician-word-recorded', clientId: input.clientId, fields: [] });
  });
}
