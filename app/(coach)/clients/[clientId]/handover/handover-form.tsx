'use client';

import { type FormEvent, useState } from 'react';
import { PACK_PARTS, type PackPart } from '#lib/handover/pack-content.ts';
import type { PackPreview } from '#lib/usecases/handover/preview-pack.ts';
import { Field } from '../../_parts/field.tsx';
import { postJson } from '../../_parts/post-json.ts';
import { fetchPack } from './fetch-pack.ts';
import styles from './handover.module.css';
import { ReportBlocks } from './report-blocks.tsx';

const PART_WORDS: Record<PackPart, [label: string, what: string]> = {
  tables: [
    'Tables (CSV)',
    'check-ins, sets, pain, load, reasons, plans, answers, with what each column means',
  ],
  history: ['For programs (JSON)', 'everything with ids, to take the client in elsewhere'],
  calendar: ['Plan as a calendar', 'titles say nothing of health'],
  stills: ['Pictures', 'that came with questions'],
  films: ['Films', 'as they are kept; out unless you tick it'],
  fhir: ['Pain for clinical systems (FHIR)', 'scores only; leave it out unless somebody asks'],
  notes: ['Notes private to coaches', 'out unless you tick it; the client may read a pack'],
};
const USUAL: PackPart[] = ['tables', 'history', 'calendar', 'stills'];

type Refused = { message: string; fields: Record<string, string> };

/** Chooses what goes into a pack, shows its first page, and makes it. */
export function HandoverForm({ clientId, first }: { clientId: string; first: PackPreview }) {
  const [preview, setPreview] = useState(first);
  const [said, setSaid] = useState('');
  const [busy, setBusy] = useState(false);
  const [refused, setRefused] = useState<Refused | null>(null);
  const [summary, setSummary] = useState('');
  const [next, setNext] = useState('');
  const error = (name: string) => refused?.fields[name];

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const body = bodyOf(new FormData(event.currentTarget));
    const asked = (event.nativeEvent as SubmitEvent).submitter?.getAttribute('value');
    setBusy(true);
    setSaid(asked === 'make' ? 'Making the pack. A long history takes half a minute.' : 'Reading.');
    const answer =
      asked === 'make'
        ? await fetchPack(`/api/clients/${clientId}/handover`, body)
        : await postJson(`/api/clients/${clientId}/handover/preview`, body);
    setBusy(false);
    setRefused(answer.ok ? null : answer);
    setSaid(
      answer.ok
        ? asked === 'make'
          ? `Made: ${String(answer.value)}. Look in your downloads.`
          : 'The first page is shown as it would be.'
        : answer.message,
    );
    if (answer.ok && asked !== 'make') setPreview(answer.value as PackPreview);
  }

  return (
    <div className={styles.beside}>
      <form onSubmit={send} noValidate className={styles.form} aria-label="What goes into the pack">
        {preview.mayShare ? null : (
          <p className={styles.warning}>
            {preview.name} has not agreed, or no longer agrees, that the record is handed on. Ask first; the
            report says it too.
          </p>
        )}
        <Field
          id="forWhom"
          label="For whom"
          hint="Name and calling, as in: physiotherapist, next coach"
          error={error('forWhom')}
        >
          {(control) => <input {...control} name="forWhom" autoComplete="off" />}
        </Field>
        <Field id="why" label="Why" hint="What they ask, in their words" error={error('why')}>
          {(control) => <input {...control} name="why" autoComplete="off" />}
        </Field>
        <div className={styles.dates}>
          <Field id="from" label="From" hint="Empty: everything" error={error('from')}>
            {(control) => <input {...control} name="from" type="date" />}
          </Field>
          <Field id="to" label="To" hint="Empty: up to today" error={error('to')}>
            {(control) => <input {...control} name="to" type="date" />}
          </Field>
          <Field id="paper" label="Paper" error={error('paper')}>
            {(control) => (
              <select {...control} name="paper">
                <option>A4</option>
                <option>Letter</option>
              </select>
            )}
          </Field>
        </div>
        <fieldset className={styles.parts}>
          <legend>Beside the report</legend>
          {PACK_PARTS.map((part) => (
            <label key={part}>
              <input type="checkbox" name="parts" value={part} defaultChecked={USUAL.includes(part)} />
              <span>
                <b>{PART_WORDS[part][0]}</b> {PART_WORDS[part][1]}
                {part === 'films' ? `: ${first.films}` : ''}
              </span>
            </label>
          ))}
        </fieldset>
        <Field
          id="summary"
          label="Your summary"
          hint="Empty: the computed one is printed, and called computed"
          error={error('summary')}
        >
          {(control) => (
            <textarea
              {...control}
              name="summary"
              rows={4}
              value={summary}
              onChange={(event) => setSummary(event.target.value)}
            />
          )}
        </Field>
        <p className={styles.draft}>
          <button type="button" data-outlined onClick={() => setSummary(preview.draft.summary)}>
            Begin with the computed one
          </button>
        </p>
        <Field
          id="next"
          label="What you would do next, and what would change your mind"
          error={error('next')}
        >
          {(control) => (
            <textarea
              {...control}
              name="next"
              rows={3}
              value={next}
              onChange={(event) => setNext(event.target.value)}
            />
          )}
        </Field>
        {preview.draft.next ? (
          <p className={styles.draft}>
            <button type="button" data-outlined onClick={() => setNext(preview.draft.next)}>
              Begin with what the checks propose
            </button>
          </p>
        ) : null}
        <Field
          id="manner"
          label="How to speak with them, and what you promised"
          hint="Language, how often, what they do not like"
          error={error('manner')}
        >
          {(control) => <textarea {...control} name="manner" rows={3} />}
        </Field>
        <div className={styles.acts}>
          <button type="submit" value="show" data-outlined disabled={busy}>
            Show the first page
          </button>
          <button type="submit" value="make" data-filled disabled={busy}>
            Make the pack
          </button>
        </div>
        <p role="status">{said}</p>
      </form>
      <section className={styles.sheet} aria-label="First page of the report">
        <ReportBlocks blocks={preview.blocks} />
      </section>
    </div>
  );
}

function bodyOf(form: FormData): Record<string, unknown> {
  const { parts: _, ...fields } = Object.fromEntries(form);
  return { ...fields, parts: form.getAll('parts') };
}
