import { megabytes } from '#lib/domain/clip-bounds.ts';
import type { Sending } from './use-films.ts';

type Props = { sending: Sending; send: (id: string) => void; drop: (id: string) => Promise<void> };

/** A film on its way, in real numbers. */
export function OnItsWay({ sending, send, drop }: Props) {
  const { film, state, sent, isKept } = sending;
  const all = film.file.size;
  return (
    <section className="film-way" aria-label={`On its way: ${film.title}`}>
      <h2>{film.title}</h2>
      <progress max={all} value={sent} aria-label="Sent">
        {Math.round((100 * sent) / all)} %
      </progress>
      <p role="status" className={state === 'refused' ? 'film-why' : 'quiet'}>
        {wordsOf(sending)}
      </p>
      {isKept || state === 'refused' ? null : (
        <p className="quiet">This browser keeps no files: leave this page open until it is sent.</p>
      )}
      <div className="film-buttons">
        {state === 'waits' || state === 'stopped' ? (
          <button type="button" className="act" onClick={() => send(film.id)}>
            Send now
          </button>
        ) : null}
        <button type="button" className="word-act" onClick={() => void drop(film.id)}>
          {state === 'refused' ? 'Take it off the list' : 'Do not send it'}
        </button>
      </div>
    </section>
  );
}

function wordsOf({ film, state, sent, why }: Sending): string {
  const all = megabytes(film.file.size);
  if (state === 'refused') return why;
  if (state === 'waits') return `${all}, on this phone. Waits for wi-fi, or for “Send now”.`;
  const so = `${megabytes(sent)} of ${all} sent.`;
  if (state === 'stopped') return `${so} No signal. It goes on by itself, also after this page was closed.`;
  return `${so} You can close this page: it goes on from here when you open it again.`;
}
