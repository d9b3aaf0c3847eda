import Link from 'next/link';
import type { ClientFilms } from '#lib/usecases/film/load-client-films.ts';
import { saidDate } from '#lib/views/say-date.ts';
import { AskFilm } from './ask-film.tsx';
import { FilmActs } from './film-acts.tsx';
import styles from './limits.module.css';

type Props = { clientId: string; films: ClientFilms; mayAct: boolean };

/** What is asked for, what came, and the form that asks. */
export function Films({ clientId, films: { asked, films, rungs, today }, mayAct }: Props) {
  return (
    <section aria-label="Films" className={styles.limits} id="films">
      <h2>Films</h2>
      {asked.length + films.length === 0 ? <p>None yet.</p> : null}
      <ul>
        {asked.map((film) => (
          <li key={film.id}>
            <strong>
              {film.rung}
              {film.side === 'both' ? '' : `, ${film.side}`}
            </strong>{' '}
            {film.angle}, asked {saidDate(film.askedOn, today)} by {film.by}
            {film.byDate ? `, wanted by ${saidDate(film.byDate, today)}` : ''}
            {film.state === 'arriving' ? ', on its way' : ''}
            {film.state === 'checking' ? ', being checked' : ''}
            {film.state === 'refused' ? `; the last one was not taken: ${film.refusedWhy}` : ''}.
            {mayAct ? (
              <FilmActs address={`/api/film-requests/${film.id}/take-back`} word="Take back" />
            ) : null}
          </li>
        ))}
        {films.map((film) => (
          <li key={film.id}>
            {film.isHere ? <Link href={`/clips/${film.id}`}>{film.title}</Link> : film.title}: {film.said}.
            {mayAct && film.isHere ? (
              <FilmActs
                address={`/api/clips/${film.id}/pin`}
                body={{ pinned: !film.pinned }}
                word={film.pinned ? 'Keep for the set time only' : 'Keep with the record'}
              />
            ) : null}
          </li>
        ))}
      </ul>
      {rungs.length > 0 ? (
        <details>
          <summary>Ask for a film</summary>
          <AskFilm clientId={clientId} rungs={rungs} today={today} />
        </details>
      ) : null}
    </section>
  );
}
