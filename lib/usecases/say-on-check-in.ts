import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { findSetId, insertCheckInWord } from '#lib/db/check-in-words.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { AppError } from '#lib/errors.ts';
import type { CheckInWordsInput } from '#lib/schemas/check-in-words.ts';
import { assertCheckInCounts } from './assert-check-in-counts.ts';
import { assertMember } from './assert-member.ts';
import { tellClient } from './tell-client.ts';

type Said = { clientId: string; checkInId: string; words: CheckInWordsInput };

/** A coach's words to the client on a day or on one of its sets. They stand on the phone at once. */
export async function sayOnCheckIn(actor: Actor, said: Said, now: Date): Promise<{ wordId: string }> {
  const by = { memberId: assertMember(actor), at: now };
  const { clientId, checkInId, words } = said;
  return withTeamPg(actor.scope, async (tx) => {
    await assertCheckInCounts(tx, said);
    const setId = words.set ? await findSetId(tx, checkInId, words.set) : null;
    if (setId === undefined)
      throw new AppError('invalid', 'This set is not in this check-in: choose the day or one of its sets.', {
        fields: { set: 'is not in this check-in: choose the day or one of its sets' },
      });
    const wordId = await insertCheckInWord(tx, { clientId, checkInId, setId, text: words.text }, by);
    await tellClient(tx, { clientId, what: 'words', id: wordId, by: actor.name }, now);
    await insertAudit(tx, actor, { action: 'words-written', clientId, objectId: wordId, fields: ['text'] });
    return { wordId };
  });
}
