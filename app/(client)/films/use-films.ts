import { useRouter } from 'next/navigation';
import { useCallback, useEffect, useRef, useState } from 'react';
import { forgetFilm, type KeptFilm, keepFilm, keptFilms } from './kept-film.ts';
import { uploadFilm } from './upload-film.ts';
import { onWifi, wantsWifiOnly } from './wifi.ts';

/** `waits`: for wi-fi or a press; `stopped`: for signal, and goes on by itself; `refused`: for another choice. */
export type Sending = {
  film: KeptFilm;
  state: 'waits' | 'sends' | 'stopped' | 'refused';
  sent: number;
  why: string;
  /** The browser keeps no files: the page has to stay open. */
  isKept: boolean;
};

const AGAIN_MS = 15_000;

/** The films of this phone that are not sent whole, one on its way at a time, oldest first. */
export function useFilms(clientId: string) {
  const router = useRouter();
  const [films, setFilms] = useState<Sending[]>([]);
  const stop = useRef<{ id: string; stop: () => void } | null>(null);
  const change = useCallback((id: string, to: Partial<Sending>) => {
    setFilms((all) => all.map((one) => (one.film.id === id ? { ...one, ...to } : one)));
  }, []);

  useEffect(() => {
    void keptFilms(clientId).then((kept) =>
      setFilms((all) => [
        ...kept
          .filter((film) => !all.some((one) => one.film.id === film.id))
          .map((film): Sending => ({ film, state: first(), sent: 0, why: '', isKept: true })),
        ...all,
      ]),
    );
    return () => stop.current?.stop();
  }, [clientId]);

  const next = films.find(({ state }) => state === 'sends');
  useEffect(() => {
    if (!next || stop.current?.id === next.film.id) return;
    const { film } = next;
    const own: { id: string; stop: () => void } = { id: film.id, stop: () => undefined };
    stop.current = own;
    const over = (to: Partial<Sending>) => {
      if (stop.current === own) stop.current = null;
      change(film.id, to);
    };
    void uploadFilm(film, {
      progress: (sent) => change(film.id, { sent }),
      done: () => {
        stop.current = null;
        void forgetFilm(film.id);
        setFilms((all) => all.filter((one) => one.film.id !== film.id));
        router.refresh();
      },
      stopped: (message) => over(message ? { state: 'refused', why: message } : { state: 'stopped' }),
    }).then(
      (stopping) => {
        own.stop = stopping;
      },
      () => over({ state: 'stopped' }),
    );
  }, [next, change, router]);

  useEffect(() => {
    const again = () =>
      setFilms((all) => all.map((one) => (one.state === 'stopped' ? { ...one, state: first() } : one)));
    window.addEventListener('online', again);
    const timer = setInterval(again, AGAIN_MS);
    return () => {
      window.removeEventListener('online', again);
      clearInterval(timer);
    };
  }, []);

  return {
    films,
    send: (id: string) => change(id, { state: 'sends' }),
    add: async (film: KeptFilm) => {
      const isKept = await keepFilm(film);
      setFilms((all) => [...all, { film, state: first(), sent: 0, why: '', isKept }]);
    },
    drop: async (id: string) => {
      if (stop.current?.id === id) {
        stop.current.stop();
        stop.current = null;
      }
      setFilms((all) => all.filter((one) => one.film.id !== id));
      await forgetFilm(id);
      await fetch(`/api/clips/${id}`, { method: 'DELETE' }).catch(() => undefined); // else it is swept after a day
    },
  };
}

/** Whether it may go at once. */
function first(): 'waits' | 'sends' {
  return wantsWifiOnly() && onWifi() !== true ? 'waits' : 'sends';
}
