import type { Actor } from '#lib/auth/actor.ts';
import { lockClient } from '#lib/db/check-ins.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findIntake, saveIntakeDraft, saveStartFacts } from '#lib/db/intakes.ts';
import { type IntakeDraft, mergeDrafts } from '#lib/domain/intake/draft.ts';
import { AppError } from '#lib/errors.ts';
import { assertConsent } from '../rights/assert-consent.ts';
import { sentWhen } from './asked-anew.ts';
import { keptDraft } from './load-intake.ts';

/**
 * Keeps the pages that were filled in, later ones over earlier ones, and answers all that is kept now. Under 18 counts
 * from the moment it is told.
 */
export async function saveDraft(
  actor: Actor,
  draft: IntakeDraft,
  now: Date,
): Promise<{ draft: IntakeDraft }> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client fills this in.');
  return withTeamPg(actor.scope, async (tx) => {
    const client = await lockClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    await assertConsent(tx, clientId);
    const intake = await findIntake(tx, clientId);
    if (await sentWhen(tx, intake, { clientId, zone: client.zone, now })) throw alreadySent();
    const merged = mergeDrafts(keptDraft(intake?.draft), notAhead(draft, now));
    await saveIntakeDraft(tx, { clientId, draft: merged, at: now });
    if (merged.you?.page.adult === 'no') await saveStartFacts(tx, clientId, { under18: true });
    return { draft: merged };
  });
}

/** A phone whose clock is ahead must not make its page the latest for good. */
export function notAhead(draft: IntakeDraft, now: Date): IntakeDraft {
  const capped = Object.entries(draft).map(([step, kept]) => [
    step,
    kept && Date.parse(kept.at) > now.getTime() ? { ...kept, at: now.toISOString() } : kept,
  ]);
  return Object.fromEntries(capped) as IntakeDraft;
}

export function alreadySent(): AppError {
  return new AppError(
    'conflict',
    'This was sent already, and what was sent is kept. If something has changed, ask your coach to change it.',
  );
}
