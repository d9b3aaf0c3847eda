import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { lockClient } from '#lib/db/check-ins.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { insertClinicianWord } from '#lib/db/clients.ts';
import { endToldHolds, insertToldHold, listToldHolds } from '#lib/db/told-holds.ts';
import { heldBy, toldInWords } from '#lib/domain/intake/told-at-start.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { ToldWordInput } from '#lib/schemas/told-word.ts';
import { assertMember } from '../assert-member.ts';

/**
 * Keeps what a clinician said about a yes of the start. A word that allows it ends what that yes held, from today on; with
 * a day to look again it is held again from the day after. A word that does not allow it stays on record, and so does
 * the hold.
 */
export async function recordToldWord(
  actor: Actor,
  { clientId, word }: { clientId: string; word: ToldWordInput },
  now: Date,
): Promise<void> {
  const memberId = assertMember(actor);
  await withTeamPg(actor.scope, async (tx) => {
    const client = await lockClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const today = localDateOf(now, client.zone);
    assertDates(word, today);
    const holds = await listToldHolds(tx, clientId, today);
    if (!holds.some(({ told }) => told === word.told))
      throw new AppError(
        'conflict',
        `Nothing is held for “${toldInWords(word.told)}” any more. Read the page again.`,
      );
    await insertClinicianWord(tx, { ...word, clientId, byId: memberId, region: null, side: null });
    if (word.lifts) await lift(tx, { clientId, word, today, at: now });
    await insertAudit(tx, actor, {
      action: 'clinician-word-recorded',
      clientId,
      objectId: word.told,
      fields: [word.lifts ? 'allows it' : 'does not allow it'],
    });
  });
}

function assertDates({ date, reviewOn }: ToldWordInput, today: string): void {
  const refuse = (field: string, message: string) => {
    throw new AppError('invalid', `${field}: ${message}`, { fields: { [field]: message } });
  };
  if (date > today) refuse('date', `must be today (${today}) or earlier`);
  if (reviewOn !== null && reviewOn < today)
    refuse('reviewOn', `is over already: from today (${today}) on, or leave it empty`);
}

type Lifted = { clientId: string; word: ToldWordInput; today: string; at: Date };

async function lift(tx: TeamPg, { clientId, word, today, at }: Lifted): Promise<void> {
  const { told, reviewOn } = word;
  await endToldHolds(tx, { clientId, told, lastDay: addDays(today, -1), at });
  if (reviewOn === null) return;
  await insertToldHold(tx, {
    clientId,
    told,
    rule: heldBy(told),
    from: addDays(reviewOn, 1),
    who: 'the clinician who wants to look again',
    words: `${toldInWords(told)}: to be looked at again by ${reviewOn}. Until the next word is recorded.`,
    at,
  });
}
