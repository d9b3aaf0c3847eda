import type { Metadata } from 'next';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { CLIP_BOUNDS } from '#lib/domain/clip-bounds.ts';
import { type Films, loadFilms } from '#lib/usecases/film/load-films.ts';
import { cameraPlan } from '#lib/views/film/camera-plan.ts';
import { longDate } from '#lib/views/phone-dates.ts';
import { BackHead } from '../_phone/back-head.tsx';
import { type Asked, FilmsScreen } from './films-screen.tsx';
import './films.css';

export const metadata: Metadata = { title: 'Films' };

export default async function FilmsPage() {
  const actor = await requireActor('see-own-training');
  const { clientId, asked, films, choices, coachName } = await loadFilms(actor, now());
  return (
    <div className="phone">
      <BackHead to="/today" page="Today">
        up to {CLIP_BOUNDS.seconds} s each
      </BackHead>
      <main className="films">
        <h1>Films</h1>
        {asked.length === 0 && films.length === 0 ? (
          <p className="quiet">{coachName} has not asked for a film. You can send one all the same.</p>
        ) : null}
        <FilmsScreen
          clientId={clientId}
          asked={asked.map(askedShown)}
          films={films}
          choices={choices}
          canSend={actor.role === 'client'}
        />
        <p className="quiet film-foot">
          Where and with what you filmed is taken out of a film before it is kept. Only you and your coaches
          see it. Film where nobody else is in the picture.
        </p>
      </main>
    </div>
  );
}

function askedShown(film: Films['asked'][number]): Asked {
  const { id, rungId, side, rung, words, by, angle, byDate, camera, refusedWhy } = film;
  const until = byDate ? `, by ${longDate(byDate)}` : '';
  return {
    id,
    rungId,
    side,
    title: side === 'both' ? rung : `${rung}, ${side}`,
    how: `${angle}${until}`,
    words,
    by,
    refusedWhy,
    plan: cameraPlan(angle, camera),
  };
}
