'use client';
import { type FormEvent, type KeyboardEvent, useId, useState } from 'react';
import type { EarlierReply } from '#lib/views/replies/reply-types.ts';
import styles from './replies.module.css';

type Props = { found: (answers: EarlierReply[] | null) => void; close: () => void };

/** Finds earlier answers by words; an empty field shows again what the question itself suggests. */
export function FindEarlier({ found, close }: Props) {
  const id = useId();
  const [problem, setProblem] = useState('');
  async function onSubmit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const words = String(new FormData(event.currentTarget).get('words') ?? '').trim();
    setProblem('');
    if (words === '') return found(null);
    try {
      const answer = await fetch(`/api/replies/earlier?${new URLSearchParams({ words })}`);
      if (!answer.ok) return setProblem('The search did not work. Try again.');
      found((await answer.json()).answers);
    } catch {
      setProblem('No connection: nothing was searched. Try again.');
    }
  }
  const onKeyDown = (event: KeyboardEvent) => event.key === 'Escape' && close();
  return (
    <search>
      <form className={styles.find} onSubmit={onSubmit}>
        <div>
          <label htmlFor={id}>Find an earlier answer by words, in any of their forms</label>
          <input
            id={id}
            name="words"
            type="search"
            maxLength={300}
            autoComplete="off"
            onKeyDown={onKeyDown}
          />
        </div>
        <button type="submit" data-outlined>
          Find
        </button>
      </form>
      <p role="status" className={styles.problem}>
        {problem}
      </p>
    </search>
  );
}
