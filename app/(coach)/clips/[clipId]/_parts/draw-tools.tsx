'use client';

import { type KeyboardEvent, useId } from 'react';
import {
  angleInWords,
  type Drawing,
  firstAngle,
  firstHands,
  firstLine,
  HANDLE_LABELS,
  type Handle,
  handleAt,
  handleMoved,
  handlesOf,
  helpInWords,
  hungStraight,
  lineInWords,
  type Size,
} from '#lib/views/looking/drawing.ts';
import styles from './looking.module.css';

const STEPS: Record<string, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** Part of the height of the picture. */
const STEP = 1 / 640;

type Props = { size: Size; drawing: Drawing; draw: (drawing: Drawing) => void; of: string };

/** Plumb line, angle and two hands of one film: drawn and taken away, moved by keys, and what they say. */
export function DrawTools({ size, drawing, draw, of }: Props) {
  const { line, angle, hands } = drawing;
  const hint = useId();
  function nudge(event: KeyboardEvent, handle: Handle) {
    const step = STEPS[event.key];
    const at = handleAt(drawing, handle);
    if (!step || !at) return;
    event.preventDefault();
    const by = size.height * STEP * (event.shiftKey ? 10 : 1);
    draw(handleMoved(drawing, handle, { x: at.x + step[0] * by, y: at.y + step[1] * by }, size));
  }
  return (
    <fieldset className={styles.tools}>
      <legend>Draw over {of}</legend>
      <div className={styles.row}>
        <button
          type="button"
          aria-pressed={line !== null}
          onClick={() => draw({ ...drawing, line: line ? null : firstLine(size) })}
        >
          Plumb line
        </button>
        <button
          type="button"
          aria-pressed={angle !== null}
          onClick={() => draw({ ...drawing, angle: angle ? null : firstAngle(size) })}
        >
          Angle of three points
        </button>
        <button
          type="button"
          aria-pressed={hands !== null}
          onClick={() => draw({ ...drawing, hands: hands ? null : firstHands(size) })}
        >
          Two hands
        </button>
        {line && line.top.x !== line.bottom.x && (
          <button type="button" onClick={() => draw(hungStraight(drawing))}>
            Hang the line straight
          </button>
        )}
      </div>
      {handlesOf(drawing).length > 0 && (
        <>
          <p id={hint} className={styles.hint}>
            Drag the points, or choose one and move it with the arrow keys, with Shift by ten.
          </p>
          <div className={styles.row}>
            {handlesOf(drawing).map((handle) => (
              <button
                key={handle}
                type="button"
                aria-describedby={hint}
                onKeyDown={(event) => nudge(event, handle)}
              >
                {HANDLE_LABELS[handle]}
              </button>
            ))}
          </div>
        </>
      )}
      {line && (
        <p>
          Plumb line: <output>{lineInWords(line, size)}</output>
        </p>
      )}
      {angle && (
        <p>
          Angle: <output>{angleInWords(angle, size)}</output>
          <span className={styles.hint}>
            {' '}
            of the picture, with the error of placing the points. A limb that turns to or from the camera
            looks at another angle than it has.
          </span>
        </p>
      )}
      {hands && (
        <p>
          Two hands: <output>{helpInWords(drawing, size)}</output>
          <span className={styles.hint}>
            {' '}
            (at rest, filmed from the front, if the plumb line runs through the body’s middle). The dashed
            ring is the hand that helps; a scale under its fingers measures it.
          </span>
        </p>
      )}
    </fieldset>
  );
}
