'use client';
import { type FormEvent, useEffect, useRef } from 'react';
import styles from './row.module.css';

type Props = {
  name: string;
  busy: boolean;
  act: (body: Record<string, unknown>) => void;
  close: () => void;
};

/** Folds the row to one line with a few words of the coach. */
export function KnownForm({ name, busy, act, close }: Props) {
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    act({ act: 'known', words: field.current?.value ?? '' });
  }
  return (
    <>
      <p className={styles.explained}>
        <b>Known.</b> The row of {name} folds to one line with your words, and stays in its group. It unfolds
        by itself when it gets worse or something new joins. The checks go on every night.
      </p>
      <form className={styles.panel} onSubmit={send} onKeyDown={(event) => event.key === 'Escape' && close()}>
        <input
          ref={field}
          name="words"
          required
          maxLength={120}
          autoComplete="off"
          aria-label="What is known, in a few words"
          placeholder="What is known, in a few words"
        />
        <div className={styles.send}>
          <button type="submit" data-filled disabled={busy}>
            Known
          </button>
          <button type="button" onClick={close}>
            Cancel (Esc)
          </button>
        </div>
      </form>
    </>
  );
}
