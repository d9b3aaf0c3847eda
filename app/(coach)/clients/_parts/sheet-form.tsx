'use client';

import type { ChangeEvent, FormEvent } from 'react';
import { Field } from './field.tsx';
import forms from './forms.module.css';
import { readText } from './read-text.ts';

type Props = {
  id: string;
  /** Of the box that the text is pasted into. */
  label: string;
  placeholder: string;
  press: string;
  text: string;
  change: (text: string) => void;
  said: string;
  say: (words: string) => void;
  busy: boolean;
  /** What it holds is shown below: the box shrinks and the press steps back. */
  isRead: boolean;
  read: () => void;
};

/** A list from a file or pasted, to be looked through before anything is written. */
export function SheetForm(props: Props) {
  const { id, label, placeholder, press, text, change, said, say, busy, isRead, read } = props;
  async function choose(event: ChangeEvent<HTMLInputElement>) {
    const file = event.target.files?.[0];
    const found = file && (await readText(file));
    if (file && found === undefined)
      say('This file is not UTF-8 text. Save it as CSV in UTF-8 and choose it again.');
    else if (found !== undefined) change(found);
  }
  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    read();
  }
  return (
    <>
      <form className={`${forms.wide} ${forms.sheet}`} onSubmit={send}>
        <Field id={`${id}-file`} label="A file">
          {(control) => (
            <input
              {...control}
              type="file"
              className={forms.file}
              accept=".csv,.tsv,.txt,text/csv"
              onChange={choose}
            />
          )}
        </Field>
        <Field id={`${id}-text`} label={label}>
          {(control) => (
            <textarea
              {...control}
              rows={isRead ? 4 : 9}
              spellCheck={false}
              value={text}
              placeholder={placeholder}
              onChange={(event) => change(event.target.value)}
            />
          )}
        </Field>
        <div className={forms.acts}>
          <button type="submit" className={isRead ? forms.other : forms.main} disabled={busy}>
            {press}
          </button>
        </div>
      </form>
      {said && (
        <p role="alert" className={`${forms.refusal} ${forms.sheet}`}>
          {said}
        </p>
      )}
    </>
  );
}
