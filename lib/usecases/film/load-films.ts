import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { type FilmRequestRow, listFilmRequests } from '#lib/db/film-requests.ts';
import { listOwnClips } from '#lib/db/own-films.ts';
import { findPhoneClient, listStanding } from '#lib/db/phone-reads.ts';
import { listPlannableRungs } from '#lib/db/plans.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { type FilmLine, filmLine } from '#lib/views/film/film-lines.ts';

export type FilmChoice = { rungId: string; name: string; eachSide: boolean };
export type Films = {
  clientId: string;
  today: string;
  coachName: string;
  /** Asked for and not come. */
  asked: FilmRequestRow[];
  films: FilmLine[];
  /** Drills of which one may send a film that nobody asked for. */
  choices: FilmChoice[];
};

const SHOWN = 60;

/** A client's own films: what is asked for, what came and what became of it. */
export function loadFilms(actor: Actor, now: Date): Promise<Films> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client has films of their own.');
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findPhoneClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const today = localDateOf(now, client.zone);
    const requests = await listFilmRequests(tx, clientId);
    const clips = await listOwnClips(tx, clientId, SHOWN);
    const standing = new Set((await listStanding(tx, clientId, today)).map(({ rungId }) => rungId));
    const rungs = (await listPlannableRungs(tx)).filter(({ id }) => standing.has(id));
    return {
      clientId,
      today,
      coachName: client.coachName,
      asked: requests.filter(({ state }) => state === null || state === 'refused' || state === 'arriving'),
      films: clips.filter(({ state }) => state !== 'arriving').map((clip) => filmLine(clip, today)),
      choices: rungs.map(({ id, name, eachSide }) => ({ rungId: id, name, eachSide })),
    };
  });
}
