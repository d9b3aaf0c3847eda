import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { findUpload, insertClip, lockClipsOf } from '#lib/db/clips.ts';
import { findOpenRequest } from '#lib/db/film-requests.ts';
import { CLIP_BOUNDS } from '#lib/domain/clip-bounds.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { AppError, invalidField } from '#lib/errors.ts';
import { clipKey } from '#lib/files/clip-pieces.ts';
import type { ClipAbout } from '#lib/schemas/clip.ts';
import { assertConsent } from '../rights/assert-consent.ts';

/** A film is of the last weeks; an older date on a phone is a wrong clock or another file. */
const DAYS_BACK = 60;

/** Begins an upload of the client's own. The same id and length again is the same upload: nothing is begun twice. */
export async function beginClip(
  actor: Actor,
  sent: { about: ClipAbout; length: number },
  now: Date,
): Promise<{ id: string; offset: number }> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client sends a clip.');
  const { about, length } = sent;
  return withTeamPg(actor.scope, async (tx) => {
    await assertConsent(tx, clientId);
    const held = await lockClipsOf(tx, { clientId, rungId: about.rungId });
    const begun = await findUpload(tx, { clipId: about.id, clientId });
    if (begun?.state === 'arriving' && begun.length === length) return { id: begun.id, offset: begun.offset };
    if (begun) throw taken();
    if (!held?.hasRung) throw invalidField('rungId', 'is no drill of this team: open the page again');
    if (held.open >= CLIP_BOUNDS.open)
      throw new AppError(
        'conflict',
        `${held.open} clips are on their way already. Finish or drop one of them, then send this one.`,
        { fields: { clip: 'is one too many at once' } },
      );
    const shown = await shownBy(tx, clientId, about);
    const id = about.id;
    const storageKey = clipKey(tx.teamId, id);
    const filmedOn = await dayOf(tx, clientId, about.filmedOn, now);
    const row = { ...shown, id, clientId, requestId: about.requestId, filmedOn, storageKey, length, at: now };
    if (!(await insertClip(tx, { ...row, sound: about.sound === 'yes', contentType: about.type })))
      throw taken();
    await insertAudit(tx, actor, { action: 'clip-begun', clientId, objectId: id, fields: [] });
    return { id, offset: 0 };
  });
}

const taken = () =>
  new AppError(
    'conflict',
    'A clip with this id is kept already. Choose the clip again to send it as a new one.',
  );

/** Drill, side and angle: of the request it answers, else as the phone says. */
async function shownBy(tx: TeamPg, clientId: string, { requestId, rungId, side }: ClipAbout) {
  if (requestId === null) return { rungId, side, angle: null };
  const asked = await findOpenRequest(tx, { requestId, clientId });
  if (!asked)
    throw new AppError(
      'not-found',
      'This film is not asked for any more. Send the clip without the request.',
    );
  return asked;
}

async function dayOf(tx: TeamPg, clientId: string, filmedOn: string | null, now: Date): Promise<string> {
  const client = await findClient(tx, clientId);
  const today = localDateOf(now, client?.zone ?? 'UTC');
  return filmedOn !== null && filmedOn <= today && filmedOn >= addDays(today, -DAYS_BACK) ? filmedOn : today;
}
