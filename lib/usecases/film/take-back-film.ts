import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { takeBackRequest } from '#lib/db/film-requests.ts';
import { AppError } from '#lib/errors.ts';
import { assertMember } from '../assert-member.ts';

/** Takes back what was asked for and has not been looked at; a clip that came for it stays. */
export async function takeBackFilm(actor: Actor, requestId: string, now: Date): Promise<{ line: string }> {
  assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    await takeBackFilmIn(tx, actor, requestId, now);
    return { line: 'Taken back. It is gone from the phone.' };
  });
}

export async function takeBackFilmIn(tx: TeamPg, actor: Actor, requestId: string, now: Date): Promise<void> {
  const taken = await takeBackRequest(tx, requestId, now);
  if (!taken)
    throw new AppError('not-found', 'This film is not asked for any more: it was looked at, or taken back.');
  const { clientId } = taken;
  await insertAudit(tx, actor, { action: 'film-taken-back', clientId, objectId: requestId, fields: [] });
}
