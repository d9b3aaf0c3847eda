'use client';

import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { movedTo } from '#lib/views/ladders/moved-to.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from './ladders.module.css';

type Item = { id: string; name: string };
type Props = {
  label: string;
  /** As they stand on the page, from the top. */
  items: Item[];
  busy: boolean;
  onSave: (ids: string[]) => void;
  onLeave: () => void;
};

/** Pixels from the edge of the window within which a drag moves the page. */
const EDGE = 56;
const SCROLL = 14;

/**
 * A list to put in order: by dragging a row's grip, by its Up and Down buttons, or with the arrow keys on the grip.
 * Native pointer events do for one short list of rows what a drag library of some 15 KB would.
 */
export function OrderList({ label, items, busy, onSave, onLeave }: Props) {
  const [order, setOrder] = useState(items);
  const [held, setHeld] = useState<string | null>(null);
  const [said, setSaid] = useState('');
  const list = useRef<HTMLOListElement>(null);

  function move(id: string, to: number) {
    const next = movedTo(order, id, to);
    if (next === order) return;
    setOrder(next);
    const place = next.findIndex((item) => item.id === id);
    setSaid(`${next[place]?.name ?? ''} is now ${place + 1} of ${next.length} from the top`);
  }

  function drag(event: PointerEvent<HTMLOListElement>) {
    const id = held;
    if (id === null) return;
    const rows = [...event.currentTarget.children].map((row) => row.getBoundingClientRect());
    const at = order.findIndex((item) => item.id === id);
    const down = rows.findLastIndex((row, index) => index > at && event.clientY > row.top + row.height / 2);
    const up = rows.findIndex((row, index) => index < at && event.clientY < row.top + row.height / 2);
    if (down > at) move(id, down);
    else if (up >= 0) move(id, up);
    if (event.clientY < EDGE) window.scrollBy(0, -SCROLL);
    if (event.clientY > window.innerHeight - EDGE) window.scrollBy(0, SCROLL);
  }

  function press(event: KeyboardEvent, id: string, at: number) {
    const to = { ArrowUp: at - 1, ArrowDown: at + 1, Home: 0, End: order.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    move(id, to);
  }

  return (
    <div className={styles.ordering}>
      <p className={forms.hint}>
        Drag a row by its grip, press Up or Down, or move with the arrow keys while the grip is in focus.
      </p>
      <ol
        ref={list}
        aria-label={label}
        className={styles.order}
        onPointerMove={drag}
        onPointerUp={() => setHeld(null)}
        onPointerCancel={() => setHeld(null)}
      >
        {order.map((item, at) => (
          <li key={item.id} data-held={held === item.id || undefined}>
            <button
              type="button"
              className={styles.grip}
              aria-label={`Move ${item.name}, ${at + 1} of ${order.length} from the top`}
              onKeyDown={(event) => press(event, item.id, at)}
              onPointerDown={(event) => {
                // The list keeps the pointer: a row that moves would lose it.
                list.current?.setPointerCapture(event.pointerId);
                setHeld(item.id);
              }}
            >
              <Grip />
            </button>
            <span>{item.name}</span>
            <Step word="Up" name={item.name} disabled={at === 0} onPress={() => move(item.id, at - 1)} />
            <Step
              word="Down"
              name={item.name}
              disabled={at === order.length - 1}
              onPress={() => move(item.id, at + 1)}
            />
          </li>
        ))}
      </ol>
      <p className="heard-only" role="status">
        {said}
      </p>
      <div className={forms.acts}>
        <button
          type="button"
          className={forms.main}
          disabled={busy}
          onClick={() => onSave(order.map((item) => item.id))}
        >
          Save the order
        </button>
        <button type="button" className={forms.other} onClick={onLeave}>
          Leave it as it was
        </button>
      </div>
    </div>
  );
}

function Step(props: { word: string; name: string; disabled: boolean; onPress: () => void }) {
  return (
    <button
      type="button"
      className={styles.step}
      aria-label={`${props.word}: ${props.name}`}
      aria-disabled={props.disabled}
      onClick={props.disabled ? undefined : props.onPress}
    >
      {props.word}
    </button>
  );
}

function Grip() {
  return (
    <svg width="12" height="18" viewBox="0 0 12 18" aria-hidden="true">
      <path d="M1 3.5h10M1 9h10M1 14.5h10" stroke="currentColor" strokeWidth="1.8" />
    </svg>
  );
}
