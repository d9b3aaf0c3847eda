import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { listStillFrames, listStills } from '#lib/db/still-frames.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { filmSecond } from '#lib/views/looking/film-second.ts';
import { datedDay } from '#lib/views/say-date.ts';
import { type KeptFigure, keptFigures } from '#lib/views/still/since-before.ts';

const SHOWN = 12;
const FRAMES = 60;

export type ClientStill = {
  id: string;
  day: string;
  /** "film of Tue 24 Nov, at 0:02.4", "sent with a question". */
  from: string;
  /** What the newest placing of it says, against the placing before it on whichever still; empty: none is kept. */
  figures: KeptFigure[];
};

/** The stills of a client, the newest first, with what was read off them. */
export function loadClientStills(actor: Actor, clientId: string, now: Date): Promise<ClientStill[]> {
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findClient(tx, clientId);
    if (!client) return [];
    const today = localDateOf(now, client.zone);
    const frames = await listStillFrames(tx, clientId, FRAMES);
    const figures = keptFigures(frames);
    return (await listStills(tx, clientId, SHOWN)).map(({ id, at, film }) => ({
      id,
      day: datedDay(localDateOf(at, client.zone), today),
      from: film
        ? `film of ${datedDay(film.filmedOn, today)}, at ${filmSecond(film.atSeconds)}`
        : 'sent with a question',
      figures: figures[frames.findIndex(({ stillId }) => stillId === id)] ?? [],
    }));
  });
}
