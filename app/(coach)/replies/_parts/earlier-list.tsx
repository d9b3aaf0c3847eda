'use client';
import { useState } from 'react';
import type { EarlierReply } from '#lib/views/replies/reply-types.ts';
import { KeptForm } from './kept-form.tsx';
import styles from './replies.module.css';

type Props = {
  answers: readonly EarlierReply[];
  /** Puts the text into the answer in the making. */
  start?: (text: string) => void;
  /** They can be kept for reuse from here. */
  keep?: boolean;
};

export function EarlierList({ answers, start, keep = false }: Props) {
  if (answers.length === 0) return null;
  return (
    <ul className={styles.answers}>
      {answers.map((answer) => (
        <li key={answer.id}>
          <q>{answer.question}</q>
          <p className={styles.text}>{answer.text}</p>
          <p className={styles.who}>
            <span>{answer.who}</span>
            {start && (
              <button
                type="button"
                aria-label={`Start from this: ${answer.who}`}
                onClick={() => start(answer.text)}
              >
                Start from this
              </button>
            )}
          </p>
          {keep && <Keep answer={answer} />}
        </li>
      ))}
    </ul>
  );
}

function Keep({ answer }: { answer: EarlierReply }) {
  const [open, setOpen] = useState(false);
  if (open)
    return <KeptForm start={{ text: answer.text, answerId: answer.id }} close={() => setOpen(false)} />;
  return (
    <button type="button" aria-label={`Keep for reuse: ${answer.who}`} onClick={() => setOpen(true)}>
      Keep for reuse
    </button>
  );
}
