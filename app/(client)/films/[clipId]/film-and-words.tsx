'use client';

import { type MouseEvent, useEffect, useRef, useState } from 'react';
import { insideFrame } from '#lib/views/looking/film-second.ts';

type Word = { id: string; atSeconds: number; moment: string; text: string; by: string };
type Props = { clipId: string; isHere: boolean; seconds: number | null; words: Word[]; coach: string };

/** The film with a mark on its time line for each of the coach's words: a tap goes there, the words stand below. */
export function FilmAndWords({ clipId, isHere, seconds, words, coach }: Props) {
  const video = useRef<HTMLVideoElement>(null);
  const [at, setAt] = useState(0);
  const [length, setLength] = useState(seconds ?? 0);
  const [chosen, setChosen] = useState('');
  const [failed, setFailed] = useState(false);

  useEffect(() => {
    const film = video.current;
    if (!film) return;
    const ready = () => Number.isFinite(film.duration) && setLength(film.duration);
    ready();
    if (film.error) setFailed(true);
    film.addEventListener('durationchange', ready);
    return () => film.removeEventListener('durationchange', ready);
  }, []);
  function go(word: Word) {
    setChosen(word.id);
    const film = video.current;
    if (!film) return;
    film.pause();
    film.currentTime = insideFrame(word.atSeconds);
    film.scrollIntoView({ block: 'nearest' });
  }
  function tap(event: MouseEvent<HTMLDivElement>) {
    const box = event.currentTarget.getBoundingClientRect();
    const to = ((event.clientX - box.left) / box.width) * length;
    const near = [...words].sort((a, b) => Math.abs(a.atSeconds - to) - Math.abs(b.atSeconds - to))[0];
    if (near) go(near);
  }
  const place = (moment: number) => `${length > 0 ? Math.min(100, (moment / length) * 100) : 0}%`;
  return (
    <>
      {isHere ? (
        <>
          <video
            ref={video}
            className="film"
            src={`/api/clips/${clipId}/film`}
            controls
            muted
            playsInline
            preload="metadata"
            onTimeUpdate={(event) => setAt(event.currentTarget.currentTime)}
            onError={() => setFailed(true)}
          />
          {words.length > 0 ? (
            <div className="film-line" aria-hidden="true" onClick={tap}>
              <i className="film-now" style={{ left: place(at) }} />
              {words.map((word) => (
                <i
                  key={word.id}
                  className={word.id === chosen ? 'film-mark film-mark-chosen' : 'film-mark'}
                  style={{ left: place(word.atSeconds) }}
                />
              ))}
            </div>
          ) : null}
          {failed ? (
            <p role="alert" className="film-failed">
              The film does not load. The words stand below; try again with a better signal.
            </p>
          ) : null}
        </>
      ) : (
        <p className="quiet">This film is not kept any more. What was said of it stays.</p>
      )}
      {words.length === 0 ? <p className="quiet">No words of {coach} on it yet.</p> : null}
      <ol className="film-words">
        {words.map((word) => (
          <li key={word.id} aria-current={word.id === chosen ? 'true' : undefined}>
            {isHere ? (
              <button type="button" onClick={() => go(word)}>
                <span className="hidden-words">Go to </span>
                {word.moment}
              </button>
            ) : (
              <span>{word.moment}</span>
            )}
            <div>
              <blockquote dir="auto">“{word.text}”</blockquote>
              <p className="quiet">{word.by}</p>
            </div>
          </li>
        ))}
      </ol>
    </>
  );
}
