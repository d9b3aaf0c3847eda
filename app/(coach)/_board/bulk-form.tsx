'use client';
import { type FormEvent, useState } from 'react';
import { chooseNobody } from './acts-store.ts';
import styles from './foot.module.css';
import { useAct } from './use-act.ts';

/** Puts all chosen rows aside in one act. */
export function BulkForm({ chosen }: { chosen: ReadonlySet<string> }) {
  const { busy, problem, sendMany } = useAct();
  const [until, setUntil] = useState('next-check-in');
  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const date = until === 'date' ? { date: form.get('date') } : {};
    const words = form.get('words') ?? '';
    const sent = await sendMany({ act: 'put-aside-many', clientIds: [...chosen], until, words, ...date });
    if (!sent) return;
    chooseNobody();
    document.querySelector<HTMLElement>('[data-row][data-folded="false"]')?.focus();
  }
  const choice = (value: string, words: string) => (
    <label>
      <input
        type="radio"
        name="until"
        value={value}
        checked={until === value}
        onChange={() => setUntil(value)}
      />{' '}
      {words}
    </label>
  );
  return (
    <form
      className={styles.bulk}
      data-bulk
      onSubmit={send}
      onKeyDown={(event) => event.key === 'Escape' && chooseNobody()}
    >
      <fieldset>
        <legend>
          <b>{chosen.size === 1 ? '1 client chosen.' : `${chosen.size} clients chosen.`}</b> Put aside
        </legend>
        {choice('next-check-in', 'until the next check-in')}
        {choice('change', 'until it changes')}
        {choice('date', 'until a date')}
        {until === 'date' && <input type="date" name="date" required aria-label="Until this date" />}
      </fieldset>
      <input
        name="words"
        autoComplete="off"
        placeholder="Why, for the record"
        aria-label="Why, for the record (can be left out)"
      />
      <button type="submit" data-filled disabled={busy}>
        Put {chosen.size} aside
      </button>
      <button type="button" onClick={chooseNobody}>
        Choose nobody (Esc)
      </button>
      <p>Rows with a danger sign or pain of 6 or more stay, and are said by name.</p>
      <p role="status">{problem}</p>
    </form>
  );
}
