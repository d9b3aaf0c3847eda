import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { insertStill, listStillIds, lockQuestion } from '#lib/db/questions.ts';
import { AppError } from '#lib/errors.ts';
import { fileStore } from '#lib/files/file-store.ts';
import { stillKey } from '#lib/files/still-key.ts';
import { stillPicture } from '#lib/files/still-picture.ts';
import { assertConsent } from './rights/assert-consent.ts';

/** Own choice: one for each plane, or start, middle and end. */
const MOST = 3;

type Sent = { questionId: string; stillId: string; bytes: Uint8Array };

/**
 * Keeps a still of an own question: decoded, written anew, bounded, without what the phone put into it. The same id
 * again changes nothing. The file is written last, inside the transaction: a row without a picture is never kept.
 */
export async function addStill(actor: Actor, sent: Sent, now: Date): Promise<{ id: string }> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client attaches a still to a question.');
  const { questionId, stillId } = sent;
  const at = { clientId, questionId };
  // Asked before the picture is decoded, which costs something, and again in the transaction that keeps it.
  if (await withTeamPg(actor.scope, (tx) => isKept(tx, at, stillId))) return { id: stillId };
  const { jpeg, width, height } = await stillPicture(sent.bytes);
  return withTeamPg(actor.scope, async (tx) => {
    if (await isKept(tx, at, stillId)) return { id: stillId };
    await assertConsent(tx, clientId);
    const storageKey = stillKey(tx.teamId, stillId);
    const row = { ...at, id: stillId, storageKey, width, height, bytes: jpeg.byteLength, at: now };
    if (!(await insertStill(tx, row)))
      throw new AppError('conflict', 'A still with this id is kept already, with another question.');
    await insertAudit(tx, actor, { action: 'still-attached', clientId, objectId: stillId, fields: [] });
    await fileStore().write(storageKey, jpeg);
    return { id: stillId };
  });
}

/** Whether this still is there already; refuses when the question is not, or holds as many as it may. */
async function isKept(
  tx: TeamPg,
  at: { clientId: string; questionId: string },
  stillId: string,
): Promise<boolean> {
  if (!(await lockQuestion(tx, at))) throw new AppError('not-found', 'This question is not there.');
  const kept = await listStillIds(tx, at.questionId);
  if (kept.includes(stillId)) return true;
  if (kept.length < MOST) return false;
  const why = `is one too many: a question holds ${MOST} stills; ask a second question for more`;
  throw new AppError('conflict', `This picture ${why}.`, { fields: { still: why } });
}
