'use client';

import { type FormEvent, useEffect, useId, useRef, useState } from 'react';
import { Field } from '../../clients/_parts/field.tsx';
import forms from '../../clients/_parts/forms.module.css';
import styles from './list.module.css';

type Props = {
  label: string;
  first: string;
  word: string;
  busy: boolean;
  onSave: (name: string) => void;
  onLeave: () => void;
};

/** One name to type. */
export function NameForm({ label, first, word, busy, onSave, onLeave }: Props) {
  const id = useId();
  const [name, setName] = useState(first);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    form.current?.querySelector('input')?.focus();
  }, []);

  function submit(event: FormEvent) {
    event.preventDefault();
    onSave(name);
  }

  return (
    <form ref={form} className={styles.nameForm} onSubmit={submit} noValidate>
      <Field id={id} label={label}>
        {(control) => <input {...control} value={name} onChange={(event) => setName(event.target.value)} />}
      </Field>
      <div className={forms.acts}>
        <button type="submit" className={forms.main} disabled={busy}>
          {word}
        </button>
        <button type="button" className={forms.other} onClick={onLeave}>
          Leave it
        </button>
      </div>
    </form>
  );
}
