import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { clipAddress } from '#lib/schemas/clip.ts';
import { loadOwnFilm } from '#lib/usecases/looking/load-own-film.ts';
import { momentAsSaid, shortDate } from '#lib/views/phone-dates.ts';
import { BackHead } from '../../_phone/back-head.tsx';
import { WordsRead } from '../../_phone/words-read.tsx';
import { FilmAndWords } from './film-and-words.tsx';
import './film.css';

export const metadata: Metadata = { title: 'Film' };

/** A client's own film, with the coach's words at the moments they belong to. */
export default async function OwnFilmPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('see-own-training');
  const address = clipAddress.safeParse(await params);
  const film = address.success ? await loadOwnFilm(actor, address.data.clipId) : undefined;
  if (!film) notFound();
  const at = now();
  return (
    <div className="phone">
      <BackHead to="/films" page="Films">
        {shortDate(film.filmedOn)}
      </BackHead>
      <main>
        <h1>{film.title}</h1>
        {film.about ? <p className="quiet">{film.about}</p> : null}
        {actor.role === 'client' ? (
          <WordsRead ids={film.words.filter((word) => word.unread).map((word) => word.id)} />
        ) : null}
        <FilmAndWords
          clipId={film.id}
          isHere={film.isHere}
          seconds={film.seconds}
          words={film.words.map((word) => ({
            ...word,
            by: `${word.by}, ${momentAsSaid(word.at, film.zone, at)}`,
          }))}
          coach={film.coachName}
        />
        {film.seen.length > 0 ? (
          <section className="film-seen" aria-labelledby="seen-head">
            <h2 id="seen-head">What was seen</h2>
            {film.seen.map((one) => (
              <p key={one.id}>
                {one.set}: <b>{one.words}</b> <span className="quiet">{one.by}</span>
              </p>
            ))}
          </section>
        ) : null}
        <p className="quiet film-foot">
          {film.lookedAt
            ? `Seen by ${film.lookedBy ?? film.coachName}, ${momentAsSaid(film.lookedAt, film.zone, at)}. `
            : `${film.coachName} has not looked yet. `}
          Words say what is seen, not what is wrong with you. Nothing here is a diagnosis: if it hurts, stop
          that work and see a licensed clinician.
        </p>
      </main>
    </div>
  );
}
