import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClipToLook } from '#lib/db/looking.ts';
import { AppError } from '#lib/errors.ts';
import type { LookAct } from '#lib/schemas/looking.ts';
import { type PreparedDone, prepareAct } from '../team/prepare-act.ts';

/** A verdict, words or a look of anybody of the team: done at once, or kept for approval as every act of an assistant. */
export async function lookAtFilm(actor: Actor, body: LookAct, now: Date): Promise<PreparedDone> {
  const clip = await withTeamPg(actor.scope, (tx) => findClipToLook(tx, body.clipId));
  if (!clip) throw new AppError('not-found', 'This film is not there, or not in your team.');
  return prepareAct(actor, { act: 'film', clientId: clip.clientId, body }, now);
}
