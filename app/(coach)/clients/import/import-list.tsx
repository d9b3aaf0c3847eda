'use client';

import { useState } from 'react';
import type { ListImported, ListPreview } from '#lib/usecases/import/import-clients.ts';
import { postJson } from '../_parts/post-json.ts';
import { SheetForm } from '../_parts/sheet-form.tsx';
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
  async function check() {
    const found = await post({ do: 'check', text });
    setPreview((found as ListPreview | undefined) ?? null);
  }
  async function take(rows: { line: number; sameName: boolean }[], links: string) {
    const done = await post({ do: 'import', text, rows, links });
    if (done) setImported(done as ListImported);
  }
  function start(next: string) {
    setText(next);
    setSaid('');
    setPreview(null);
  }
  if (imported) return <Imported imported={imported} />;
  return (
    <>
      <SheetForm
        id="list"
        label="Or the list itself"
        placeholder={'Name;E-mail;Zone\nAda Lund;ada@example.org;Europe/Oslo'}
        press="Look through it"
        text={text}
        change={start}
        said={said}
        say={setSaid}
        busy={busy}
        isRead={preview !== null}
        read={() => void check()}
      />
      {preview && <Preview preview={preview} busy={busy} take={take} />}
    </>
  );
}
