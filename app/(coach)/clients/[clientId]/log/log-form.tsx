'use client';

import { useRouter } from 'next/navigation';
import { type ChangeEvent, useState } from 'react';
import type { CheckedLog, LookedAt } from '#lib/usecases/import/log/import-log.ts';
import type { LogMapping } from '#lib/usecases/import/log/shape-log.ts';
import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import { postJson } from '../../_parts/post-json.ts';
import { readText } from '../../_parts/read-text.ts';
import { FoundDays } from './found-days.tsx';
import styles from './log.module.css';
import { MatchLog } from './match-log.tsx';

/** From the text to what it holds to the days it brings. */
export function LogForm({ clientId, name }: { clientId: string; name: string }) {
  const router = useRouter();
  const [text, setText] = useState('');
  const [said, setSaid] = useState('');
  const [busy, setBusy] = useState(false);
  const [looked, setLooked] = useState<LookedAt | null>(null);
  const [mapping, setMapping] = useState<LogMapping | null>(null);
  const [found, setFound] = useState<CheckedLog | null>(null);

  async function post(body: object): Promise<unknown> {
    setBusy(true);
    const answer = await postJson(`/api/clients/${clientId}/log`, body);
    setBusy(false);
    setSaid(answer.ok ? '' : answer.message);
    return answer.ok ? answer.value : undefined;
  }
  function start(next: string) {
    setText(next);
    setLooked(null);
    setFound(null);
    setSaid('');
  }
  async function look(columns?: LogMapping['columns']) {
    setFound(null);
    const answer = (await post({ do: 'look', text, columns })) as LookedAt | undefined;
    if (answer) setLooked(answer);
  }
  async function check(next: LogMapping) {
    setMapping(next);
    setFound(((await post({ do: 'check', text, mapping: next })) as CheckedLog | undefined) ?? null);
  }
  async function take() {
    const done = (await post({ do: 'take', text, mapping })) as { days: number } | undefined;
    if (!done) return;
    start('');
    setSaid(
      `${done.days} ${done.days === 1 ? 'day has' : 'days have'} come in. It can be taken back below for a day.`,
    );
    router.refresh();
  }
  async function choose(event: ChangeEvent<HTMLInputElement>) {
    const file = event.target.files?.[0];
    if (!file) return;
    const read = await readText(file);
    if (read === undefined)
      setSaid('This file is not UTF-8 text. Save it as CSV in UTF-8 and choose it again.');
    else start(read);
  }
  return (
    <>
      <form
        className={`${forms.wide} ${styles.text}`}
        onSubmit={(event) => {
          event.preventDefault();
          void look();
        }}
      >
        <Field id="log-file" label="A file">
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
        <Field id="log-text" label="Or the log itself">
          {(control) => (
            <textarea
              {...control}
              rows={looked ? 4 : 8}
              spellCheck={false}
              value={text}
              placeholder={'Date;Exercise;Side;Sets;Reps;RPE\n2025-03-31;Wall line;;3;40 s;6'}
              onChange={(event) => start(event.target.value)}
            />
          )}
        </Field>
        <div className={forms.acts}>
          <button type="submit" className={looked ? forms.other : forms.main} disabled={busy}>
            Look at its columns
          </button>
        </div>
      </form>
      {said && (
        <p role="alert" className={`${forms.refusal} ${styles.said}`}>
          {said}
        </p>
      )}
      {looked && <MatchLog key={looked.rows} looked={looked} busy={busy} look={look} check={check} />}
      {found && <FoundDays found={found} name={name} busy={busy} take={take} />}
    </>
  );
}
