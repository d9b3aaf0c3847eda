import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { lockClient } from '#lib/db/check-ins.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { findIsMinor } from '#lib/db/clients.ts';
import { endConsents, insertConsent, listConsents } from '#lib/db/consents.ts';
import { insertGuardian, listGuardians } from '#lib/db/guardians.ts';
import { CONSENT_VERSION, type ConsentKind, consentState } from '#lib/domain/consent.ts';
import { guardianState } from '#lib/domain/intake/guardian-text.ts';
import { AppError } from '#lib/errors.ts';
import type { ConsentBody } from '#lib/schemas/rights.ts';

/**
 * Keeps the client's consent with the version of the text and the time. The same again changes nothing; an earlier
 * version ends where the new one begins. Under 18 a parent or guardian is named who agrees.
 */
export async function giveConsent(actor: Actor, body: ConsentBody, now: Date): Promise<void> {
  const { clientId } = actor;
  if (!clientId || actor.role !== 'client')
    throw new AppError('forbidden', 'Only a client gives this here; a parent or guardian by their own page.');
  if (body.version !== CONSENT_VERSION)
    throw new AppError('conflict', 'The text has changed since it was opened. Read it again.', {
      fields: { version: 'is not the text in force' },
    });
  await withTeamPg(actor.scope, async (tx) => {
    if (!(await lockClient(tx, clientId))) throw new AppError('not-found', 'This client is not here.');
    const by = await whoAgrees(tx, { ...actor, clientId }, { guardian: body.guardian, now });
    const given = { clientId, by, at: now };
    await give(tx, actor, { ...given, kind: 'health-data' });
    if (body.share) await give(tx, actor, { ...given, kind: 'share-with-next-coach' });
    else await withdraw(tx, actor, { ...given, kind: 'share-with-next-coach' });
  });
}

type Given = { clientId: string; kind: ConsentKind; by: string; at: Date };

async function whoAgrees(
  tx: TeamPg,
  actor: Actor & { clientId: string },
  { guardian, now }: { guardian: string; now: Date },
): Promise<string> {
  if (!(await findIsMinor(tx, actor.clientId))) return actor.name;
  const { clientId } = actor;
  const named = await listGuardians(tx, clientId);
  const against = named.find((one) => ['declined', 'withdrawn'].includes(guardianState(one)));
  if (against)
    throw new AppError(
      'forbidden',
      `${against.name} has said no by their own link. Only they can say yes, by a new link from your coach.`,
    );
  if (guardian !== '') {
    // Named here, asked by a link of their own before training begins.
    if (!named.some(({ name }) => name === guardian))
      await insertGuardian(tx, { clientId, name: guardian, email: null, at: now });
    return `${guardian}, parent or guardian`;
  }
  throw new AppError('invalid', 'Under 18 a parent or guardian agrees. Read this together.', {
    fields: { guardian: 'must be the name of the parent or guardian who agrees' },
  });
}

async function give(tx: TeamPg, actor: Actor, given: Given): Promise<void> {
  if (consentState(await listConsents(tx, given.clientId), given.kind).state === 'given') return;
  await endConsents(tx, { ...given, by: null });
  await insertConsent(tx, { ...given, version: CONSENT_VERSION });
  const { clientId, kind } = given;
  await insertAudit(tx, actor, { action: 'consent-given', clientId, objectId: kind, fields: [] });
}

/** Takes one consent back; what was not given stays so. */
export async function withdraw(tx: TeamPg, actor: Actor, taken: Given): Promise<boolean> {
  if ((await endConsents(tx, taken)) === 0) return false;
  const { clientId, kind } = taken;
  await insertAudit(tx, actor, { action: 'consent-withdrawn', clientId, objectId: kind, fields: [] });
  return true;
}
