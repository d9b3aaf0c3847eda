import type { Actor } from '#lib/auth/actor.ts';
import { hoursWaited } from '#lib/checks/answering-hours.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findAnsweringHours } from '#lib/db/histories.ts';
import { listWaitingFilms, type WaitingFilm } from '#lib/db/own-films.ts';

export type FilmToLook = WaitingFilm & { hours: number };

const SHOWN = 40;
const HOURS_COUNTED = 240;

/** Films that nobody has looked at, the longest waiting first, by hours in which the team answers. */
export function loadWaitingFilms(actor: Actor, of: 'mine' | 'all', now: Date): Promise<FilmToLook[]> {
  return withTeamPg(actor.scope, async (tx) => {
    const answering = await findAnsweringHours(tx);
    const waiting = await listWaitingFilms(tx, {
      coachId: of === 'mine' ? actor.memberId : null,
      limit: SHOWN,
    });
    const asked = now.toISOString();
    return waiting.map((film) => ({
      ...film,
      hours: Math.floor(hoursWaited(film.receivedAt.toISOString(), asked, answering, HOURS_COUNTED)),
    }));
  });
}
