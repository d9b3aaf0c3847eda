'use client';

import { useEffect, useRef, useState } from 'react';
import type { FilmChoice } from '#lib/usecases/looking/load-looking.ts';
import { type Drawing, NOTHING_DRAWN } from '#lib/views/looking/drawing.ts';
import { insideFrame } from '#lib/views/looking/film-second.ts';
import { type Alignment, besideAt, isApart } from '#lib/views/looking/side-by-side.ts';
import { areKeysOn, isTyping } from '../../../_frame/single-keys.ts';
import { Beside, ChooseBeside } from './beside.tsx';
import { DrawTools } from './draw-tools.tsx';
import { FilmControls } from './film-controls.tsx';
import { keysOf } from './film-keys.ts';
import { FilmPane } from './film-pane.tsx';
import styles from './looking.module.css';
import { type Said, SayHere } from './say-here.tsx';
import { TakeStill } from './take-still.tsx';
import { type Film, type Known, useFilm } from './use-film.ts';
import { type Judged, VerdictForm } from './verdict-form.tsx';

type Props = {
  clipId: string;
  label: string;
  known: Known;
  others: FilmChoice[];
  judged: Judged;
  said: Said;
  mayTake: boolean;
};

/** A film to look at slowly: steps, lines over it, another film beside it, and what is said of it. */
export function Looking({ clipId, label, known, others, judged, said, mayTake }: Props) {
  const film = useFilm(known);
  const beside = useRef<Film | null>(null);
  const [drawing, draw] = useState<Drawing>(NOTHING_DRAWN);
  const [aligned, setAligned] = useState<Alignment>({ here: 0, beside: 0 });
  const [together, setTogether] = useState(true);
  const [chosenId, setChosen] = useState('');
  const chosen = others.find(({ id }) => id === chosenId);
  const other = () => (together ? beside.current : null);

  async function seek(seconds: number) {
    const at = await film.show(seconds);
    const next = other();
    if (next) await next.show(insideFrame(besideAt(at, aligned, next.seconds)));
  }
  async function step(by: 1 | -1, times = 1) {
    let at = film.at;
    for (let done = 0; done < times; done += 1) at = await film.step(by);
    const next = other();
    if (next) await next.show(insideFrame(besideAt(at, aligned, next.seconds)));
  }
  function toggle() {
    const next = other();
    if (film.playing) {
      film.pause();
      next?.pause();
      if (next) void next.show(insideFrame(besideAt(film.at, aligned, next.seconds)));
      return;
    }
    film.play();
    next?.play();
  }
  function choose(id: string) {
    setAligned({ here: 0, beside: 0 });
    setChosen(id);
  }
  function setRate(rate: number) {
    film.setRate(rate);
    beside.current?.setRate(rate);
  }
  useEffect(() => {
    const next = together ? beside.current : null;
    const video = next?.video.current;
    if (!film.playing || !next || !video) return;
    if (isApart(film.at, video.currentTime, aligned, next.seconds))
      video.currentTime = besideAt(film.at, aligned, next.seconds);
  }, [film.at, film.playing, aligned, together]);
  const press = keysOf({ toggle, step: (by, times) => void step(by, times) });
  useSingleKeys((by) => void step(by));

  return (
    <div className={styles.desk}>
      <div className={styles.panes}>
        <ChooseBeside others={others} chosen={chosen?.id ?? ''} choose={choose} />
        <FilmPane
          film={film}
          src={`/api/clips/${clipId}/film`}
          label={label}
          mirrored={false}
          drawing={drawing}
          draw={draw}
          press={press}
        >
          <FilmControls
            film={film}
            fps={known.fps}
            marks={said.words.map(({ atSeconds }) => atSeconds)}
            toggle={toggle}
            step={(by, times) => void step(by, times)}
            seek={(seconds) => void seek(seconds)}
            setRate={setRate}
          />
          <DrawTools size={film.size} drawing={drawing} draw={draw} of="this film" />
          {mayTake && <TakeStill clipId={clipId} film={film} />}
        </FilmPane>
        {chosen && (
          <Beside
            key={chosen.id}
            other={chosen}
            film={beside}
            here={film}
            aligned={aligned}
            align={setAligned}
            together={together}
            setTogether={setTogether}
          />
        )}
      </div>
      <div className={styles.sayings}>
        <VerdictForm clipId={clipId} {...judged} />
        <SayHere
          clipId={clipId}
          at={film.at}
          settled={film.settled}
          pause={film.pause}
          seek={(to) => void seek(insideFrame(to))}
          {...said}
        />
      </div>
    </div>
  );
}

/** Comma and full stop step a frame wherever the focus is, unless somebody types or switched single keys off. */
function useSingleKeys(step: (by: 1 | -1) => void) {
  const act = useRef(step);
  act.current = step;
  useEffect(() => {
    const press = (event: globalThis.KeyboardEvent) => {
      const by = { ',': -1, '.': 1 }[event.key];
      if (by === undefined || isTyping(event) || !areKeysOn()) return;
      event.preventDefault();
      act.current(by === 1 ? 1 : -1);
    };
    document.addEventListener('keydown', press);
    return () => document.removeEventListener('keydown', press);
  }, []);
}
