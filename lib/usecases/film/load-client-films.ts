import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import {
  type FilmRequestRow,
  type FilmRung,
  listFilmRequests,
  listFilmRungs,
} from '#lib/db/film-requests.ts';
import { listOwnClips } from '#lib/db/own-films.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { type ClientFilm, clientFilm } from '#lib/views/film/client-film.ts';

export type ClientFilms = {
  today: string;
  /** `askedOn`: the client's own day. */
  asked: (FilmRequestRow & { askedOn: string })[];
  films: ClientFilm[];
  /** Of what a film can be asked. */
  rungs: FilmRung[];
};

const SHOWN = 24;

/** Films of one client as coaches see them; undefined: no such client here. */
export function loadClientFilms(actor: Actor, clientId: string, now: Date): Promise<ClientFilms | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findClient(tx, clientId);
    if (!client) return undefined;
    const today = localDateOf(now, client.zone);
    const clips = await listOwnClips(tx, clientId, SHOWN);
    return {
      today,
      asked: (await listFilmRequests(tx, clientId))
        .filter(({ state }) => state !== 'ready')
        .map((film) => ({ ...film, askedOn: localDateOf(film.askedAt, client.zone) })),
      films: clips.filter(({ state }) => state !== 'arriving').map((clip) => clientFilm(clip, today)),
      rungs: await listFilmRungs(tx, clientId),
    };
  });
}
