'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useEffect } from 'react';
import { CameraDrawing } from '#app/_ui/camera-drawing.tsx';
import type { CameraPlan } from '#lib/views/film/camera-plan.ts';
import type { FilmLine } from '#lib/views/film/film-lines.ts';
import { OnItsWay } from './on-its-way.tsx';
import { PickFilm } from './pick-film.tsx';
import { useFilms } from './use-films.ts';
import { WifiOnly } from './wifi-only.tsx';

export type Asked = {
  id: string;
  rungId: string;
  side: string;
  title: string;
  /** "from behind, by Monday 30 November" */
  how: string;
  words: string;
  by: string;
  refusedWhy: string | null;
  plan: CameraPlan;
};
type Choice = { rungId: string; name: string; eachSide: boolean };
type Props = { clientId: string; asked: Asked[]; films: FilmLine[]; choices: Choice[]; canSend: boolean };

const LOOK_MS = 4_000;

/** What is asked for, what is on its way, what came. */
export function FilmsScreen({ clientId, asked, films, choices, canSend }: Props) {
  const { films: sending, add, send, drop } = useFilms(clientId);
  useNews(films.some(({ state }) => state === 'checking'));
  const on = new Set(sending.map(({ film }) => film.about.requestId));
  return (
    <>
      {asked
        .filter(({ id }) => !on.has(id))
        .map((film) => (
          <section key={film.id} className="film-asked" aria-label={`Film asked for: ${film.title}`}>
            <h2>{film.title}</h2>
            <p>
              {film.by} asks for it {film.how}.
            </p>
            {film.words ? <p className="quiet">“{film.words}”</p> : null}
            {film.refusedWhy ? (
              <p className="film-why">The last one was not taken. {film.refusedWhy}</p>
            ) : null}
            <CameraDrawing plan={film.plan} />
            <p className="quiet">{film.plan.words}</p>
            {canSend ? (
              <PickFilm
                about={{ requestId: film.id, rungId: film.rungId, side: film.side }}
                title={film.title}
                clientId={clientId}
                add={add}
              />
            ) : null}
          </section>
        ))}
      {sending.map((one) => (
        <OnItsWay key={one.film.id} sending={one} send={send} drop={drop} />
      ))}
      {canSend ? (
        <>
          <OtherFilm clientId={clientId} choices={choices} add={add} />
          <WifiOnly />
        </>
      ) : null}
      {films.length === 0 ? null : (
        <section aria-label="Films that came" className="film-list">
          {films.map((film) => (
            <div key={film.id} className="film-line">
              <h2>
                {film.state === 'ready' || film.state === 'gone' ? (
                  <Link href={`/films/${film.id}`}>{film.title}</Link>
                ) : (
                  film.title
                )}
              </h2>
              <p className="quiet">
                {film.day}. {film.said}
              </p>
              {film.state === 'ready' ? (
                <a className="word-act" href={`/api/clips/${film.id}/film`} download={`film-${film.id}.mp4`}>
                  Save it on this phone
                </a>
              ) : null}
              {film.words.map((word) => (
                <p key={word.text}>
                  “{word.text}” <span className="quiet">{word.by}</span>
                </p>
              ))}
            </div>
          ))}
        </section>
      )}
    </>
  );
}

/** While a film is looked through the page asks for news. */
function useNews(isOn: boolean): void {
  const router = useRouter();
  useEffect(() => {
    if (!isOn) return;
    const timer = setInterval(() => router.refresh(), LOOK_MS);
    return () => clearInterval(timer);
  }, [isOn, router]);
}

type Add = ReturnType<typeof useFilms>['add'];

function OtherFilm({ clientId, choices, add }: { clientId: string; choices: Choice[]; add: Add }) {
  if (choices.length === 0) return null;
  return (
    <details className="film-other">
      <summary>Send another film</summary>
      <PickFilm choices={choices} clientId={clientId} add={add} />
    </details>
  );
}
