'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { newOpening, type OpeningsForm } from '#lib/views/ladders/opening-form.ts';
import forms from '../../clients/_parts/forms.module.css';
import { OpeningFields } from './opening-fields.tsx';
import styles from './openings.module.css';
import { useLadderEdit } from './use-ladder-edit.tsx';

type Props = { ladder: { ladderId: string; base: string }; first: OpeningsForm };

/** All openings of one ladder, kept in one save. */
export function OpeningsEditor({ ladder, first }: Props) {
  const router = useRouter();
  // A key for each, so that taking one away moves no typed words to another.
  const [rows, setRows] = useState(first.openings.map((opening, key) => ({ key, opening })));
  const [next, setNext] = useState(rows.length);
  const { send, busy, error, told } = useLadderEdit(ladder, () => router.push(`/ladders/${ladder.ladderId}`));
  const openings = rows.map((row) => row.opening);

  function submit(event: FormEvent) {
    event.preventDefault();
    send({ act: 'openings', openings });
  }

  function add() {
    setRows([...rows, { key: next, opening: newOpening({ ...first, openings }) }]);
    setNext(next + 1);
  }

  if (first.own.length === 0) return <p>This ladder has no rung in use that could open. Add a rung first.</p>;
  return (
    <form className={forms.wide} onSubmit={submit} noValidate>
      {told}
      {error('openings') ? <p className={forms.error}>{error('openings')}</p> : null}
      {rows.length === 0 ? <p>Every rung of this ladder is open to everybody.</p> : null}
      <ol className={styles.openings}>
        {rows.map(({ key, opening }, at) => (
          <li key={key}>
            <OpeningFields
              at={at}
              opening={opening}
              form={first}
              error={(name) => error(`openings.${at}.${name}`)}
              onChange={(patch) =>
                setRows(
                  rows.map((row) => (row.key === key ? { key, opening: { ...row.opening, ...patch } } : row)),
                )
              }
              onRemove={() => setRows(rows.filter((row) => row.key !== key))}
            />
          </li>
        ))}
      </ol>
      <div>
        <button type="button" className={forms.other} onClick={add}>
          Add an opening
        </button>
      </div>
      <div className={`${forms.acts} ${styles.end}`}>
        <button type="submit" className={forms.main} disabled={busy}>
          Save the openings
        </button>
        <a className={forms.other} href={`/ladders/${ladder.ladderId}`}>
          Leave without saving
        </a>
      </div>
    </form>
  );
}
