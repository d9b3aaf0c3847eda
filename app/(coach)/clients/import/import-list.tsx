'use client';

import { type ChangeEvent, type FormEvent, useState } from 'react';
import type { ListImported, ListPreview } from '#lib/usecases/import/import-clients.ts';
import { Field } from '../_parts/field.tsx';
import forms from '../_parts/forms.module.css';
import { postJson } from '../_parts/post-json.ts';
import { readText } from '../_parts/read-text.ts';
import { Imported } from './imported.tsx';
import { Preview } from './preview.tsx';

/** From the text to the preview to the clients. */
export function ImportList() {
  const [text, setText] = useState('');
  const [said, setSaid] = useState('');
  const [busy, setBusy] = useState(false);
  const [preview, setPreview] = useState<ListPreview | null>(null);
  const [imported, setImported] = useState<ListImported | null>(null);

  async function post(body: object): Promise<unknown> {
    setBusy(true);
    const answer = await postJson('/api/clients/import', body);
    setBusy(false);
    setSaid(answer.ok ? '' : answer.message);
    return answer.ok ? answer.value : undefined;
  }
  async function check(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const found = await post({ do: 'check', text });
    setPreview((found as ListPreview | undefined) ?? null);
  }
  async function take(rows: { line: number; sameName: boolean }[], links: string) {
    const done = await post({ do: 'import', text, rows, links });
    if (done) setImported(done as ListImported);
  }
  async function choose(event: ChangeEvent<HTMLInputElement>) {
    const file = event.target.files?.[0];
    if (!file) return;
    const read = await readText(file);
    if (read === undefined)
      setSaid('This file is not UTF-8 text. Save it as CSV in UTF-8 and choose it again.');
    else {
      setText(read);
      setSaid('');
      setPreview(null);
    }
  }
  if (imported) return <Imported imported={imported} />;
  return (
    <>
      <form className={forms.wide} style={{ maxWidth: 760 }} onSubmit={check}>
        <Field id="list-file" label="A file">
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
        <Field id="list-text" label="Or the list itself">
          {(control) => (
            <textarea
              {...control}
              rows={preview ? 4 : 9}
              spellCheck={false}
              value={text}
              placeholder={'Name;E-mail;Zone\nAda Lund;ada@example.org;Europe/Oslo'}
              onChange={(event) => {
                setText(event.target.value);
                setPreview(null);
              }}
            />
          )}
        </Field>
        <div className={forms.acts}>
          <button type="submit" className={preview ? forms.other : forms.main} disabled={busy}>
            Look through it
          </button>
        </div>
      </form>
      {said && (
        <p role="alert" className={forms.refusal} style={{ marginTop: 16, maxWidth: 760 }}>
          {said}
        </p>
      )}
      {preview && <Preview preview={preview} busy={busy} take={take} />}
    </>
  );
}
