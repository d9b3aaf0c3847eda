'use client';

import type { KeyboardEvent, ReactNode } from 'react';
import type { Drawing } from '#lib/views/looking/drawing.ts';
import { DrawnOver } from './drawn-over.tsx';
import styles from './looking.module.css';
import type { Film } from './use-film.ts';

type Props = {
  film: Film;
  src: string;
  label: string;
  mirrored: boolean;
  drawing: Drawing;
  draw: (drawing: Drawing) => void;
  press: (event: KeyboardEvent) => void;
  children?: ReactNode;
};

/** One film with what is drawn over it. Keys work while it has the focus. */
export function FilmPane({ film, src, label, mirrored, drawing, draw, press, children }: Props) {
  const { size, failed, video } = film;
  return (
    <div className={styles.pane}>
      <div
        className={styles.film}
        style={{ '--ratio': size.width / size.height } as React.CSSProperties}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it takes the keys that step the film
        tabIndex={0}
        aria-label={`${label}. Space plays and stops, left and right step a frame, with Shift ten`}
        onKeyDown={press}
      >
        <video
          ref={video}
          src={src}
          muted
          playsInline
          preload="auto"
          className={mirrored ? styles.mirrored : undefined}
        />
        <DrawnOver size={size} drawing={drawing} draw={draw} />
      </div>
      <div className={styles.aside}>
        {failed && (
          <p role="alert" className={styles.failed}>
            This browser cannot show the film. It is kept as it came: try another browser.
          </p>
        )}
        {children}
      </div>
    </div>
  );
}
