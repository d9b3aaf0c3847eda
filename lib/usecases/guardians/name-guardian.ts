import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { lockClient } from '#lib/db/check-ins.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { insertGuardian, listGuardians, setGuardianEmail } from '#lib/db/guardians.ts';
import { AppError } from '#lib/errors.ts';
import type { GuardianInput } from '#lib/schemas/guardian.ts';
import { assertMember } from '../assert-member.ts';

/** Names a parent or guardian of a client under 18; the same name again only gets the address. */
export async function nameGuardian(
  actor: Actor,
  { clientId, guardian }: { clientId: string; guardian: GuardianInput },
  now: Date,
): Promise<{ guardianId: string }> {
  assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    const client = await lockClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    if (!client.under18)
      throw new AppError('conflict', `${client.name} is not under 18: nobody has to agree for them.`);
    const known = (await listGuardians(tx, clientId)).find(({ name }) => name === guardian.name);
    if (known && guardian.email !== null) await setGuardianEmail(tx, known.id, guardian.email);
    const guardianId = known?.id ?? (await insertGuardian(tx, { ...guardian, clientId, at: now }));
    await insertAudit(tx, actor, { action: 'guardian-named', clientId, objectId: guardianId, fields: [] });
    return { guardianId };
  });
}
