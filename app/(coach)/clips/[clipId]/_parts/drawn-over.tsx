'use client';

import { type PointerEvent, useRef, useState } from 'react';
import {
  type Drawing,
  type Handle,
  handleAt,
  handleMoved,
  handlesOf,
  type Size,
} from '#lib/views/looking/drawing.ts';
import styles from './looking.module.css';

type Props = { size: Size; drawing: Drawing; draw: (drawing: Drawing) => void };

/** Lines over a film, dragged by their handles. The same handles stand as buttons below, for the keyboard. */
export function DrawnOver({ size, drawing, draw }: Props) {
  const picture = useRef<SVGSVGElement>(null);
  const [dragged, setDragged] = useState<Handle | null>(null);
  const { line, angle, hands } = drawing;
  const mark = Math.max(size.width, size.height) / 90;

  function pointOf(event: PointerEvent) {
    const box = picture.current?.getBoundingClientRect();
    if (!box) return { x: 0, y: 0 };
    return {
      x: ((event.clientX - box.left) / box.width) * size.width,
      y: ((event.clientY - box.top) / box.height) * size.height,
    };
  }
  function take(event: PointerEvent<SVGCircleElement>, handle: Handle) {
    if (event.button !== 0) return;
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    setDragged(handle);
  }
  function drag(event: PointerEvent) {
    if (dragged) draw(handleMoved(drawing, dragged, pointOf(event), size));
  }
  return (
    <svg
      ref={picture}
      className={styles.over}
      viewBox={`0 0 ${size.width} ${size.height}`}
      aria-hidden="true"
      onPointerMove={drag}
      onPointerUp={() => setDragged(null)}
      onPointerCancel={() => setDragged(null)}
    >
      {line && (
        <line
          className={styles.line}
          strokeWidth={mark / 3}
          x1={line.top.x}
          y1={line.top.y}
          x2={line.bottom.x}
          y2={line.bottom.y}
        />
      )}
      {angle && (
        <polyline
          className={styles.angle}
          strokeWidth={mark / 3}
          points={[angle.a, angle.at, angle.b].map(({ x, y }) => `${x},${y}`).join(' ')}
        />
      )}
      {hands && (
        <line
          className={styles.hands}
          strokeWidth={mark / 3}
          strokeDasharray={`${mark} ${mark}`}
          x1={hands.carrying.x}
          y1={hands.carrying.y}
          x2={hands.helping.x}
          y2={hands.helping.y}
        />
      )}
      {handlesOf(drawing).map((handle) => {
        const at = handleAt(drawing, handle);
        return (
          at && (
            <circle
              key={handle}
              data-handle={handle}
              className={styles.handle}
              cx={at.x}
              cy={at.y}
              r={mark * 1.3}
              strokeWidth={mark / 3}
              strokeDasharray={handle === 'helping hand' ? mark : undefined}
              onPointerDown={(event) => take(event, handle)}
            />
          )
        );
      })}
    </svg>
  );
}
