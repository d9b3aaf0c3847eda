'use client';

import { type RefObject, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { stepBack, stepOn } from './step-frame.ts';

export const RATES = [1, 0.5, 0.25, 0.125] as const;
/** Where a film does not say how many frames a second it has. */
const USUAL_FPS = 30;
/** A seek to the frame that is shown already may show nothing anew. */
const PATIENCE_MS = 300;

export type Film = {
  video: RefObject<HTMLVideoElement | null>;
  /** Where the frame that is shown begins, seconds. */
  at: number;
  seconds: number;
  size: { width: number; height: number };
  playing: boolean;
  rate: number;
  /** The browser cannot show it. */
  failed: boolean;
  play: () => void;
  pause: () => void;
  /** The frame of a moment; resolves to where it begins. */
  show: (seconds: number) => Promise<number>;
  step: (by: 1 | -1) => Promise<number>;
  /**
   * Where the frame begins that is shown once all that was asked for is done: a step looks at frames on its way, and what
   * is said or taken belongs to none of those.
   */
  settled: () => Promise<number>;
  setRate: (rate: number) => void;
};
/** What is known of it before the browser has read it. */
export type Known = {
  fps: number | null;
  seconds: number | null;
  width: number | null;
  height: number | null;
};

/** A film that is played slowly and stepped frame by frame. */
export function useFilm(known: Known): Film {
  const video = useRef<HTMLVideoElement>(null);
  const shortest = useRef<number | undefined>(undefined);
  const queue = useRef<Promise<unknown>>(Promise.resolve());
  const sought = useRef<Promise<unknown>>(Promise.resolve());
  const [at, setAt] = useState(0);
  const [playing, setPlaying] = useState(false);
  const [failed, setFailed] = useState(false);
  const [rate, setOwnRate] = useState<number>(1);
  const [size, setSize] = useState({ width: known.width ?? 720, height: known.height ?? 1280 });
  const [seconds, setSeconds] = useState(known.seconds ?? 0);
  const shown = useRef(0);

  const come = useCallback((mediaTime: number) => {
    shown.current = mediaTime;
    setAt(mediaTime);
  }, []);
  useEffect(() => {
    const film = video.current;
    if (!film) return;
    const ready = () => {
      if (film.videoWidth > 0) setSize({ width: film.videoWidth, height: film.videoHeight });
      if (Number.isFinite(film.duration)) setSeconds(film.duration);
    };
    const events: [string, () => void][] = [
      ['loadedmetadata', ready],
      ['durationchange', ready],
      ['play', () => setPlaying(true)],
      ['pause', () => setPlaying(false)],
      ['ended', () => setPlaying(false)],
      ['error', () => setFailed(true)],
    ];
    for (const [name, act] of events) film.addEventListener(name, act);
    if (film.readyState > 0) ready();
    if (film.error) setFailed(true);
    const stop = watchFrames(film, (mediaTime, length) => {
      come(mediaTime);
      if (length !== undefined) shortest.current = Math.min(length, shortest.current ?? length);
    });
    return () => {
      stop();
      for (const [name, act] of events) film.removeEventListener(name, act);
    };
  }, [come]);

  const show = useCallback(
    async (to: number) => {
      const film = video.current;
      if (!film) return shown.current;
      const next = frameAt(film, to, shown.current);
      sought.current = next;
      come(await next);
      return shown.current;
    },
    [come],
  );
  const step = useCallback(
    (by: 1 | -1) => {
      const next = queue.current.then(async () => {
        video.current?.pause();
        const usual = 1 / (known.fps ?? USUAL_FPS);
        const steps = {
          show,
          from: shown.current,
          frame: Math.min(usual, shortest.current ?? usual),
          isMeasured: shortest.current !== undefined,
        };
        const from = steps.from;
        const to = by === 1 ? await stepOn(steps) : await stepBack(steps);
        if (to !== from) shortest.current = Math.min(Math.abs(to - from), shortest.current ?? usual);
        return to;
      });
      queue.current = next.catch(() => undefined);
      return next;
    },
    [show, known.fps],
  );
  const settled = useCallback(async () => {
    await queue.current;
    await sought.current;
    return shown.current;
  }, []);
  const setRate = useCallback((to: number) => {
    setOwnRate(to);
    if (video.current) video.current.playbackRate = to;
  }, []);
  const play = useCallback(() => void video.current?.play().catch(() => undefined), []);
  const pause = useCallback(() => video.current?.pause(), []);
  return useMemo(
    () => ({ video, at, seconds, size, playing, rate, failed, play, pause, show, step, settled, setRate }),
    [at, seconds, size, playing, rate, failed, play, pause, show, step, settled, setRate],
  );
}

/** Tells of each frame that is shown while it plays, with its length where the one before was shown as well. */
function watchFrames(film: HTMLVideoElement, tell: (mediaTime: number, length: number | undefined) => void) {
  if (!tellsFrames()) {
    const told = () => tell(film.currentTime, undefined);
    film.addEventListener('timeupdate', told);
    return () => film.removeEventListener('timeupdate', told);
  }
  let before: { mediaTime: number; presentedFrames: number } | undefined;
  let handle = 0;
  const next = (_now: number, frame: VideoFrameCallbackMetadata) => {
    const follows = before && !film.paused && frame.presentedFrames === before.presentedFrames + 1;
    const length = follows && before ? frame.mediaTime - before.mediaTime : undefined;
    before = frame;
    tell(frame.mediaTime, length !== undefined && length > 0 ? length : undefined);
    handle = film.requestVideoFrameCallback(next);
  };
  handle = film.requestVideoFrameCallback(next);
  return () => film.cancelVideoFrameCallback(handle);
}

/** Whether this browser says which frame it shows. */
function tellsFrames(): boolean {
  return 'requestVideoFrameCallback' in HTMLVideoElement.prototype;
}

/** Seeks, and says where the frame begins that is then shown; `shown` where nothing was shown anew. */
function frameAt(film: HTMLVideoElement, seconds: number, shown: number): Promise<number> {
  const last = Number.isFinite(film.duration) ? film.duration : Number.POSITIVE_INFINITY;
  const to = Math.max(0, Math.min(seconds, last));
  return new Promise((resolve) => {
    const hasFrames = tellsFrames();
    let handle = 0;
    const done = (mediaTime: number) => {
      clearTimeout(late);
      if (hasFrames) film.cancelVideoFrameCallback(handle);
      resolve(mediaTime);
    };
    const late = setTimeout(() => done(hasFrames ? shown : film.currentTime), PATIENCE_MS * 4);
    if (hasFrames) handle = film.requestVideoFrameCallback((_now, frame) => done(frame.mediaTime));
    film.addEventListener(
      'seeked',
      () => setTimeout(() => done(hasFrames ? shown : film.currentTime), PATIENCE_MS),
      { once: true },
    );
    film.currentTime = to;
  });
}
