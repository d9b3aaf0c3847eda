'use client';

import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { centreOfMass } from '#lib/balance/centre-of-mass.ts';
import type { Placed, Point } from '#lib/balance/landmarks.ts';
import type { MassModel } from '#lib/balance/segment-tables.ts';
import { distance } from '#lib/balance/set-up.ts';
import {
  BONES,
  movedTo,
  nextSpot,
  type Placing,
  type Size,
  SPOT_LABELS,
  SPOTS,
  type Spot,
  spotAt,
  uprightThrough,
} from '#lib/views/still/placing.ts';
import styles from './still.module.css';

const STEPS: Record<string, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
const ZOOMS = [1, 1.5, 2, 3] as const;

type Props = {
  stillId: string;
  size: Size;
  placing: Placing;
  first: Placed | null;
  model: MassModel;
  move: (placing: Placing) => void;
};

/** The still with its points: a press puts the chosen one there and goes on to the next, arrow keys move it. */
export function Picture({ stillId, size, placing, first, model, move }: Props) {
  const picture = useRef<SVGSVGElement>(null);
  const [dragged, setDragged] = useState<Spot | null>(null);
  const [zoom, setZoom] = useState<number>(1);
  const mark = Math.max(size.width, size.height) / 120 / zoom;

  function pointOf(event: PointerEvent): Point {
    const box = picture.current?.getBoundingClientRect();
    if (!box) return { x: 0, y: 0 };
    return {
      x: ((event.clientX - box.left) / box.width) * size.width,
      y: ((event.clientY - box.top) / box.height) * size.height,
    };
  }
  function press(event: PointerEvent<SVGSVGElement>) {
    if (event.button !== 0) return;
    const at = pointOf(event);
    const near = SPOTS.find((spot) => distance(spotAt(placing, spot), at) < mark * 2.5);
    const spot = near ?? placing.chosen;
    event.currentTarget.setPointerCapture(event.pointerId);
    setDragged(spot);
    move({ ...movedTo(placing, spot, near ? spotAt(placing, spot) : at, size), chosen: spot });
  }
  function drag(event: PointerEvent<SVGSVGElement>) {
    if (dragged) move(movedTo(placing, dragged, pointOf(event), size));
  }
  function release() {
    if (dragged) move({ ...placing, chosen: nextSpot(dragged, 1) });
    setDragged(null);
  }
  function nudge(event: KeyboardEvent, spot: Spot) {
    const step = STEPS[event.key];
    if (!step) return;
    event.preventDefault();
    const times = event.shiftKey ? 10 : 1;
    const { x, y } = spotAt(placing, spot);
    move({
      ...movedTo(placing, spot, { x: x + step[0] * times, y: y + step[1] * times }, size),
      chosen: spot,
    });
  }
  const { placed, plumb, chosen } = placing;
  const centre = centreOfMass(placed, model);
  const stack = uprightThrough(placing, size);
  return (
    <div>
      <div className={styles.window}>
        <svg
          ref={picture}
          className={styles.picture}
          style={{ width: `${zoom * 100}%` }}
          viewBox={`0 0 ${size.width} ${size.height}`}
          role="img"
          aria-label="The still with the points placed on it; each can be moved with the list below"
          onPointerDown={press}
          onPointerMove={drag}
          onPointerUp={release}
          onPointerCancel={() => setDragged(null)}
        >
          <image href={`/api/stills/${stillId}`} width={size.width} height={size.height} />
          <g className={styles.plumb} strokeWidth={mark / 4}>
            <line x1={plumb.top.x} y1={plumb.top.y} x2={plumb.bottom.x} y2={plumb.bottom.y} />
          </g>
          <g className={styles.stack} strokeWidth={mark / 5}>
            <line x1={stack.top.x} y1={stack.top.y} x2={stack.bottom.x} y2={stack.bottom.y} />
          </g>
          {first && <Body placed={first} mark={mark} className={styles.first} />}
          <Body placed={placed} mark={mark} className={styles.body} />
          <circle className={styles.centre} cx={centre.x} cy={centre.y} r={mark} strokeWidth={mark / 3} />
          {SPOTS.map((spot) => {
            const { x, y } = spotAt(placing, spot);
            return (
              <circle
                key={spot}
                className={styles.spot}
                data-chosen={spot === chosen || undefined}
                cx={x}
                cy={y}
                r={spot === chosen ? mark : mark * 0.7}
                strokeWidth={mark / 4}
              />
            );
          })}
        </svg>
      </div>
      <fieldset className={styles.zoom}>
        <legend>Zoom</legend>
        {ZOOMS.map((one) => (
          <button key={one} type="button" aria-pressed={zoom === one} onClick={() => setZoom(one)}>
            {one} x
          </button>
        ))}
      </fieldset>
      <ul
        className={styles.spots}
        aria-label="Points: choose one, move it with the arrow keys, with Shift by ten"
      >
        {SPOTS.map((spot) => (
          <li key={spot}>
            <button
              type="button"
              aria-pressed={spot === chosen}
              onClick={() => move({ ...placing, chosen: spot })}
              onKeyDown={(event) => nudge(event, spot)}
            >
              {SPOT_LABELS[spot]}
              <span>
                {Math.round(spotAt(placing, spot).x)}, {Math.round(spotAt(placing, spot).y)}
              </span>
            </button>
          </li>
        ))}
      </ul>
      <details className={styles.rules}>
        <summary>How to take the picture</summary>
        <p>
          From the side, square to the body, at hip height, from 4 m or more, without zooming wide. The whole
          body and both hands in the frame, hands level. Something that hangs straight in the same plane: a
          string with a weight, a door frame beside the hands. Common practice; the nearer the camera, the
          more it bends what is off its middle.
        </p>
      </details>
    </div>
  );
}

function Body({ placed, mark, className }: { placed: Placed; mark: number; className: string | undefined }) {
  return (
    <g className={className} strokeWidth={mark / 3}>
      {BONES.map(([from, to]) => (
        <line
          key={`${from} ${to}`}
          x1={placed[from].x}
          y1={placed[from].y}
          x2={placed[to].x}
          y2={placed[to].y}
        />
      ))}
    </g>
  );
}
