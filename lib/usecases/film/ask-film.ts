import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { hasRungSide, isAskedAlready, takeBackRequest } from '#lib/db/film-requests.ts';
import { insertFilmRequest } from '#lib/db/step-records.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { FilmAsk } from '#lib/schemas/clip.ts';
import type { ActDone } from '../act-on-reason.ts';
import { assertMember } from '../assert-member.ts';
import { type PreparedDone, prepareAct } from '../team/prepare-act.ts';
import { tellClient } from '../tell-client.ts';

/** Asks a client for a film: done at once, or kept for approval as every act of an assistant. */
export function askFilm(
  actor: Actor,
  input: { clientId: string; film: FilmAsk },
  now: Date,
): Promise<PreparedDone> {
  return prepareAct(actor, { act: 'ask-film', clientId: input.clientId, body: input.film }, now);
}

/** The same inside the caller's transaction. The client is told, and sees it beside the set. */
export async function askFilmIn(
  tx: TeamPg,
  actor: Actor & { memberId: string },
  { clientId, film }: { clientId: string; film: FilmAsk },
  now: Date,
): Promise<ActDone> {
  const client = await findClient(tx, clientId);
  if (!client) throw new AppError('not-found', 'This client is not here.');
  const rung = await hasRungSide(tx, film.rungId);
  if (!rung) throw field('rungId', 'is no rung in use: choose another');
  const side = rung.eachSide ? film.side : 'both';
  if (film.byDate !== null && film.byDate < localDateOf(now, client.zone))
    throw field('byDate', 'is over already where the client lives: choose a later day');
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

function field(name: string, why: string): AppError {
  return new AppError('invalid', `${name}: ${why}`, { fields: { [name]: why } });
}

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
