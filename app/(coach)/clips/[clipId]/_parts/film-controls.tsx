'use client';

import { filmSecond } from '#lib/views/looking/film-second.ts';
import styles from './looking.module.css';
import { type Film, RATES } from './use-film.ts';

const RATE_LABELS: Record<number, string> = { 1: '1', 0.5: '1/2', 0.25: '1/4', 0.125: '1/8' };

type Props = {
  film: Film;
  fps: number | null;
  /** Moments that words stand at, seconds. */
  marks: readonly number[];
  toggle: () => void;
  step: (by: 1 | -1, times?: number) => void;
  seek: (seconds: number) => void;
  setRate: (rate: number) => void;
};

/** Play, frames, speed, and where in the film it stands. */
export function FilmControls({ film, fps, marks, toggle, step, seek, setRate }: Props) {
  const { at, seconds, playing, rate } = film;
  const frame = fps ? `, frame ${Math.round(at * fps) + 1}` : '';
  return (
    <div className={styles.controls}>
      <label className={styles.where}>
        <span className="heard-only">Moment of the film</span>
        <input
          type="range"
          min={0}
          max={seconds || 1}
          step="any"
          value={Math.min(at, seconds || 1)}
          aria-valuetext={filmSecond(at)}
          onChange={(event) => seek(Number(event.target.value))}
          onKeyDown={(event) => {
            const by = { ArrowLeft: -1, ArrowRight: 1, ArrowDown: -1, ArrowUp: 1 }[event.key];
            if (by === undefined) return;
            event.preventDefault();
            step(by === 1 ? 1 : -1, event.shiftKey ? 10 : 1);
          }}
        />
        <span className={styles.marks} aria-hidden="true">
          {marks.map((mark, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: marks of one moment are alike
            <i key={`${mark} ${index}`} style={{ left: `${seconds > 0 ? (mark / seconds) * 100 : 0}%` }} />
          ))}
        </span>
      </label>
      <div className={styles.row}>
        <button type="button" className={styles.play} onClick={toggle}>
          {playing ? 'Stop' : 'Play'}
        </button>
        <button type="button" onClick={() => step(-1)}>
          Frame back
        </button>
        <button type="button" onClick={() => step(1)}>
          Frame on
        </button>
        <span className={styles.moment}>
          <b>{filmSecond(at)}</b> of {filmSecond(seconds)}
          {frame}
        </span>
      </div>
      <fieldset className={styles.rates}>
        <legend>Speed</legend>
        {RATES.map((one) => (
          <button key={one} type="button" aria-pressed={rate === one} onClick={() => setRate(one)}>
            {RATE_LABELS[one]}
          </button>
        ))}
      </fieldset>
    </div>
  );
}
