import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { insertAfterCheckIn, lockClient } from '#lib/db/check-ins.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { type ClipToLook, findClipToLook, insertFilmWord, markLooked } from '#lib/db/looking.ts';
import { AppError, invalidField } from '#lib/errors.ts';
import type { LookAct } from '#lib/schemas/looking.ts';
import type { ActDone } from '../act-on-reason.ts';
import { tellClient } from '../tell-client.ts';
import { giveVerdict } from './give-verdict.ts';

/** A member who acts. */
export type Looker = Actor & { memberId: string };

/**
 * What a coach does on a film, inside the caller's transaction: a verdict on a set, words at a moment, or only that it was
 * looked at. Each of them says that it was looked at, so that it waits no more.
 */
export async function doLook(tx: TeamPg, actor: Looker, body: LookAct, now: Date): Promise<ActDone> {
  const clip = await lockClip(tx, body.clipId);
  const { clientId } = clip;
  const by = { memberId: actor.memberId, at: now };
  const isNews = await markLooked(tx, clip.id, by);
  if (body.act === 'verdict') return giveVerdict(tx, actor, { clip, given: body }, now);
  if (isNews) await insertAfterCheckIn(tx, { clientId, checkInId: clip.id, change: 'looked' });
  if (body.act === 'words') {
    assertWithin(clip, body.atSeconds);
    const { atSeconds, text } = body;
    const wordId = await insertFilmWord(tx, { clientId, clipId: clip.id, atSeconds, text }, by);
    await tellClient(tx, { clientId, what: 'words', id: wordId, by: actor.name }, now);
    await insertAudit(tx, actor, { action: 'words-written', clientId, objectId: wordId, fields: ['film'] });
    return { actId: wordId, line: `Words to ${clip.client} stand at this moment.`, folds: false };
  }
  await insertAudit(tx, actor, { action: 'film-looked-at', clientId, objectId: clip.id, fields: [] });
  return { actId: clip.id, line: 'Looked at. It waits no more.', folds: false };
}

/** A moment of the film, with a little room for how browsers count. */
export function assertWithin({ seconds }: ClipToLook, atSeconds: number): void {
  if (seconds !== null && atSeconds > seconds + 1)
    throw invalidField(
      'atSeconds',
      `is after the end of the film (${seconds.toFixed(1)} s): choose a moment of it`,
    );
}

/** The film, its client locked as a check-in locks them; refused in another state than these. */
export async function lockClip(
  tx: TeamPg,
  clipId: string,
  states: readonly string[] = ['ready'],
): Promise<ClipToLook> {
  const found = await findClipToLook(tx, clipId);
  if (!found) throw new AppError('not-found', 'This film is not there, or not in your team.');
  await lockClient(tx, found.clientId);
  const clip = await findClipToLook(tx, clipId);
  if (!clip || !states.includes(clip.state))
    throw new AppError('conflict', 'This film cannot be looked at: it is not here whole, or no longer kept.');
  return clip;
}
