import Link from 'next/link';
import type { FilmToLook } from '#lib/usecases/film/load-waiting-films.ts';
import { exactDate } from '#lib/views/say-date.ts';
import styles from './replies.module.css';

/** Films that nobody has looked at, the longest waiting first. */
export function WaitingFilms({ films }: { films: FilmToLook[] }) {
  return (
    <section className={styles.section} aria-labelledby="films">
      <h2 id="films">{films.length === 0 ? 'No film waits' : `Films: ${films.length} to look at`}</h2>
      {films.length === 0 ? (
        <p className={styles.lead}>Films that clients send stand here until somebody has looked at them.</p>
      ) : (
        <ul className={styles.films}>
          {films.map((film) => (
            <li key={film.clipId}>
              <Link href={`/clips/${film.clipId}`}>
                {film.rung}
                {film.side === 'both' ? '' : `, ${film.side}`}
              </Link>{' '}
              of <Link href={`/clients/${film.clientId}`}>{film.client}</Link>, filmed{' '}
              {exactDate(film.filmedOn)}
              {film.seconds === null ? '' : `, ${Math.round(film.seconds)} s`}; waits {film.hours} h.
              {film.asked ? (
                <span className={styles.counted}> Asked: “{film.asked}”</span>
              ) : (
                ' Not asked for.'
              )}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
