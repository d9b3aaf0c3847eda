'use client';

import { type PointerEvent, useRef, useState } from 'react';

/** Pixels from the edge of the window within which a drag moves the page. */
const EDGE = 56;
const SCROLL = 14;

/**
 * Dragging the children of one element into another order, each by its grip. Native pointer events do for one short
 * list what a drag library of some 15 KB would. `ids` as the children stand on the page, from the top.
 */
export function useDrag<Box extends HTMLElement>(
  ids: readonly string[],
  onMove: (id: string, to: number) => void,
) {
  const [held, setHeld] = useState<string | null>(null);
  const box = useRef<Box>(null);

  function drag(event: PointerEvent<Box>) {
    if (held === null) return;
    const rows = [...event.currentTarget.children].map((row) => row.getBoundingClientRect());
    const at = ids.indexOf(held);
    const down = rows.findLastIndex((row, index) => index > at && event.clientY > row.top + row.height / 2);
    const up = rows.findIndex((row, index) => index < at && event.clientY < row.top + row.height / 2);
    if (down > at) onMove(held, down);
    else if (up >= 0) onMove(held, up);
    if (event.clientY < EDGE) window.scrollBy(0, -SCROLL);
    if (event.clientY > window.innerHeight - EDGE) window.scrollBy(0, SCROLL);
  }

  const letGo = () => setHeld(null);
  return {
    held,
    box: { ref: box, onPointerMove: drag, onPointerUp: letGo, onPointerCancel: letGo },
    hold: (id: string) => (event: PointerEvent) => {
      // The whole list keeps the pointer: a row that moves would lose it.
      box.current?.setPointerCapture(event.pointerId);
      setHeld(id);
    },
  };
}

/** Where an arrow key, Home or End takes the item at a place of so many; undefined: another key. */
export function placeByKey(key: string, at: number, of: number): number | undefined {
  return { ArrowUp: at - 1, ArrowDown: at + 1, Home: 0, End: of - 1 }[key];
}
