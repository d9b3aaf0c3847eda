'use client';

import { useEffect, useRef } from 'react';
import type { LadderTouch } from '#lib/views/ladders/ladder-touches.ts';
import { touchesInWords } from '#lib/views/ladders/touches-in-words.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from './ladders.module.css';

type Props = { touches: LadderTouch[]; busy: boolean; onAgree: () => void; onLeave: () => void };

/** Says which clients an edit touches and how, and asks. Esc leaves all as it was. */
export function TouchDialog({ touches, busy, onAgree, onLeave }: Props) {
  const box = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    box.current?.showModal();
  }, []);
  const { count, question, agree, since } = touchesInWords(touches);
  return (
    <dialog ref={box} className={styles.dialog} aria-labelledby="touches" onClose={onLeave}>
      <h2 id="touches">{question}</h2>
      <ul className={styles.touches}>
        {touches.map((touch) => (
          <li key={touch.words}>
            <strong>{touch.words}</strong>
            <span>
              {count(touch)}: {touch.clients.map((client) => client.name).join(', ')}
            </span>
          </li>
        ))}
      </ul>
      {since.map((words) => (
        <p key={words} className={forms.hint}>
          {words}
        </p>
      ))}
      <div className={forms.acts}>
        <button type="button" className={forms.main} disabled={busy} onClick={onAgree}>
          {agree}
        </button>
        <button type="button" className={forms.other} onClick={() => box.current?.close()}>
          Do not change it
        </button>
      </div>
    </dialog>
  );
}
