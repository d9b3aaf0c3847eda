'use client';

import { type KeyboardEvent, useState } from 'react';
import { movedTo } from '#lib/views/ladders/moved-to.ts';
import forms from '../../clients/_parts/forms.module.css';
import { Grip } from '../../clients/_parts/grip.tsx';
import { placeByKey, useDrag } from '../../clients/_parts/use-drag.ts';
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

/** A list to put in order: by dragging a row's grip, by its Up and Down buttons, or with the arrow keys on the grip. */
export function OrderList({ label, items, busy, onSave, onLeave }: Props) {
  const [order, setOrder] = useState(items);
  const [said, setSaid] = useState('');
  const ids = order.map((item) => item.id);
  const { held, box, hold } = useDrag<HTMLOListElement>(ids, move);

  function move(id: string, to: number) {
    const next = movedTo(order, id, to);
    if (next === order) return;
    setOrder(next);
    const place = next.findIndex((item) => item.id === id);
    setSaid(`${next[place]?.name ?? ''} is now ${place + 1} of ${next.length} from the top`);
  }

  function press(event: KeyboardEvent, id: string, at: number) {
    const to = placeByKey(event.key, at, order.length);
    if (to === undefined) return;
    event.preventDefault();
    move(id, to);
  }

  return (
    <div className={styles.ordering}>
      <p className={forms.hint}>
        Drag a row by its grip, press Up or Down, or move with the arrow keys while the grip is in focus.
      </p>
      <ol {...box} aria-label={label} className={styles.order}>
        {order.map((item, at) => (
          <li key={item.id} data-held={held === item.id || undefined}>
            <Grip
              label={`Move ${item.name}, ${at + 1} of ${order.length} from the top`}
              onKeyDown={(event) => press(event, item.id, at)}
              onPointerDown={hold(item.id)}
            />
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
        <button type="button" className={forms.main} disabled={busy} onClick={() => onSave(ids)}>
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
