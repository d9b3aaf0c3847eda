'use client';

import { type RefObject, useEffect, useState } from 'react';
import type { FilmChoice } from '#lib/usecases/looking/load-looking.ts';
import { type Drawing, NOTHING_DRAWN } from '#lib/views/looking/drawing.ts';
import { filmSecond, insideFrame } from '#lib/views/looking/film-second.ts';
import { type Alignment, besideAt } from '#lib/views/looking/side-by-side.ts';
import { Field } from '../../../clients/_parts/field.tsx';
import { DrawTools } from './draw-tools.tsx';
import { keysOf } from './film-keys.ts';
import { FilmPane } from './film-pane.tsx';
import styles from './looking.module.css';
import { type Film, useFilm } from './use-film.ts';

type Shared = {
  film: RefObject<Film | null>;
  here: Film;
  aligned: Alignment;
  align: (aligned: Alignment) => void;
  together: boolean;
  setTogether: (together: boolean) => void;
};

type Choice = { others: FilmChoice[]; chosen: string; choose: (id: string) => void };

/** Which other film of the client stands beside the first. */
export function ChooseBeside({ others, chosen, choose }: Choice) {
  const hint =
    others.length === 0 ? 'No other film of this client is kept.' : 'Then and now, or left and right.';
  return (
    <div className={styles.choose}>
      <Field id="film-beside" label="Beside it" hint={hint}>
        {(control) => (
          <select
            {...control}
            value={chosen}
            disabled={others.length === 0}
            onChange={(event) => choose(event.target.value)}
          >
            <option value="">nothing</option>
            {others.map(({ id, label }) => (
              <option key={id} value={id}>
                {label}
              </option>
            ))}
          </select>
        )}
      </Field>
    </div>
  );
}

/** Another film of the same client beside the first: then and now, or left and right turned over. */
export function Beside({
  other,
  film,
  here,
  aligned,
  align,
  together,
  setTogether,
}: Shared & { other: FilmChoice }) {
  const own = useFilm(other);
  const [mirrored, setMirrored] = useState(false);
  const [drawing, draw] = useState<Drawing>(NOTHING_DRAWN);
  useEffect(() => {
    film.current = own;
    return () => {
      film.current = null;
    };
  }, [film, own]);
  async function step(by: 1 | -1, times = 1) {
    for (let done = 0; done < times; done += 1) await own.step(by);
  }
  const toggle = () => (own.playing ? own.pause() : own.play());
  async function alignHere() {
    align({ here: await here.settled(), beside: await own.settled() });
  }
  return (
    <FilmPane
      film={own}
      src={`/api/clips/${other.id}/film`}
      label={`Beside: ${other.label}`}
      mirrored={mirrored}
      drawing={drawing}
      draw={draw}
      press={keysOf({ toggle, step: (by, times) => void step(by, times) })}
    >
      <div className={styles.row}>
        <button type="button" onClick={() => void step(-1)}>
          Its frame back
        </button>
        <button type="button" onClick={() => void step(1)}>
          Its frame on
        </button>
        <button type="button" aria-pressed={mirrored} onClick={() => setMirrored(!mirrored)}>
          Turned over
        </button>
        <span className={styles.moment}>
          <b>{filmSecond(own.at)}</b> of {filmSecond(own.seconds)}
        </span>
      </div>
      <div className={styles.row}>
        <button type="button" onClick={() => void alignHere()}>
          These two frames belong together
        </button>
        <button
          type="button"
          aria-pressed={together}
          onClick={() => {
            setTogether(!together);
            if (!together) void own.show(insideFrame(besideAt(here.at, aligned, own.seconds)));
          }}
        >
          Step both
        </button>
        <span className={styles.hint}>
          {filmSecond(aligned.here)} here, {filmSecond(aligned.beside)} beside
        </span>
      </div>
      <DrawTools size={own.size} drawing={drawing} draw={draw} of="the film beside" />
    </FilmPane>
  );
}
