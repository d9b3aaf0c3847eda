import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { insertActEvents, lockReasons, writeHolds } from '#lib/db/acts.ts';
import { lockClient } from '#lib/db/check-ins.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { listUnclosedReasonIds } from '#lib/db/standing-changes.ts';
import { AppError } from '#lib/errors.ts';
import { withdraw } from './give-consent.ts';

const WHY = 'consent taken back';

/**
 * Takes the client's consents back: from now on nothing is checked and no check-in is taken, and what was found is
 * closed. What is kept stays until deletion is asked for or the years are over. Twice is as once.
 */
export async function withdrawConsent(actor: Actor, now: Date): Promise<void> {
  const { clientId } = actor;
  if (!clientId)
    throw new AppError('forbidden', 'Only a client, or their parent or guardian, takes this back.');
  await withTeamPg(actor.scope, (tx) => withdrawConsentIn(tx, { actor, clientId, now }));
}

/** The same in the transaction of the act that it follows from. */
export async function withdrawConsentIn(
  tx: TeamPg,
  { actor, clientId, now }: { actor: Actor; clientId: string; now: Date },
): Promise<void> {
  if (!(await lockClient(tx, clientId))) throw new AppError('not-found', 'This client is not here.');
  const by = actor.role === 'guardian' ? `${actor.name}, parent or guardian` : actor.name;
  const taken = { clientId, by, at: now };
  const ended = await withdraw(tx, actor, { ...taken, kind: 'health-data' });
  await withdraw(tx, actor, { ...taken, kind: 'share-with-next-coach' });
  if (ended) await closeFound(tx, clientId, now);
}

/** Nothing that was found stands on a board any more; the events say why. */
async function closeFound(tx: TeamPg, clientId: string, now: Date): Promise<void> {
  const before = await lockReasons(tx, await listUnclosedReasonIds(tx, clientId));
  const after = before.map((hold) => ({
    ...hold,
    state: 'closed',
    closedAt: now.toISOString(),
    closedWhy: WHY,
  }));
  await writeHolds(tx, after, now);
  const about = { actId: randomUUID(), clientId, act: 'consent-withdrawn', words: '' };
  const events = before.map((hold, index) => ({
    reasonId: hold.id,
    what: 'closed',
    level: null,
    body: { ...about, before: hold, after: after[index] ?? null },
  }));
  await insertActEvents(tx, events, { memberId: null, at: now });
}
