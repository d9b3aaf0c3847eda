import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { lockClient } from '#lib/db/check-ins.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { hasRungSide, isAskedAlready } from '#lib/db/film-requests.ts';
import { insertFilmRequest } from '#lib/db/step-records.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError, invalidField } from '#lib/errors.ts';
import type { FilmAsk } from '#lib/schemas/clip.ts';
import type { ActDone } from '../act-on-reason.ts';
import { tellClient } from '../tell-client.ts';

/** Asks for a film inside the caller's transaction. The client is told, and sees it beside the set. */
export async function askFilmIn(
  tx: TeamPg,
  actor: Actor & { memberId: string },
  { clientId, film }: { clientId: string; film: FilmAsk },
  now: Date,
): Promise<ActDone> {
  const client = await findClient(tx, clientId);
  if (!client) throw new AppError('not-found', 'This client is not here.');
  const rung = await hasRungSide(tx, film.rungId);
  if (!rung) throw invalidField('rungId', 'is no rung in use: choose another');
  const side = rung.eachSide ? film.side : 'both';
  if (film.byDate !== null && film.byDate < localDateOf(now, client.zone))
    throw invalidField('byDate', 'is over already where the client lives: choose a later day');
  await lockClient(tx, clientId); // the same asked twice at once is asked once
  if (await isAskedAlready(tx, { ...film, clientId, side }))
    throw new AppError('conflict', 'This film is asked for already, and has not been looked at.');
  const byDate = film.byDate;
  const filmId = await insertFilmRequest(
    tx,
    { ...film, byDate, side, clientId },
    { memberId: actor.memberId, at: now },
  );
  await tellClient(tx, { clientId, what: 'film', id: filmId, by: actor.name }, now);
  await insertAudit(tx, actor, { action: 'film-asked', clientId, objectId: filmId, fields: [] });
  return {
    actId: filmId,
    line: `A film is asked for. It stands on the phone of ${client.name}.`,
    folds: false,
  };
}
