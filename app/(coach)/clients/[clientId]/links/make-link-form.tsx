'use client';

import { type FormEvent, useState } from 'react';
import { PART_LABELS } from '#lib/handover/part-labels.ts';
import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import { postJson, textIn } from '../../_parts/post-json.ts';
import styles from './links.module.css';
import { MadeLink } from './made-link.tsx';

type Made = { url: string; code: string; forWhom: string };
/** Private notes are never in a pack that anybody with a link can take. */
const PARTS = (['tables', 'history', 'calendar', 'stills', 'fhir'] as const).map((part) => ({
  part,
  label: PART_LABELS[part],
  usual: part !== 'fhir',
}));

/** Who, why, how long, how much; then the link and the code, shown this once. */
export function MakeLinkForm({ clientId }: { clientId: string }) {
  const [withPack, setWithPack] = useState(false);
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState('');
  const [fields, setFields] = useState<Record<string, string>>({});
  const [made, setMade] = useState<Made | null>(null);

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const text = (name: string) => String(form.get(name) ?? '');
    const forWhom = text('forWhom');
    setBusy(true);
    const answer = await postJson(`/api/clients/${clientId}/links`, {
      forWhom,
      why: text('why'),
      summary: text('summary'),
      days: text('days'),
      period: text('period'),
      withPack,
      parts: form.getAll('parts').map(String),
    });
    setBusy(false);
    setFields(answer.ok ? {} : answer.fields);
    setSaid(answer.ok ? '' : answer.message);
    if (answer.ok) setMade({ url: textIn(answer.value, 'url'), code: textIn(answer.value, 'code'), forWhom });
  }
  if (made) return <MadeLink {...made} />;
  return (
    <form className={forms.form} onSubmit={send} noValidate>
      {said ? (
        <p role="alert" className={forms.refusal}>
          {said}
        </p>
      ) : null}
      <Field
        id="forWhom"
        label="For whom"
        error={fields.forWhom}
        hint="One person, by name: “Dr Amara Lindqvist, physiotherapist”."
      >
        {(control) => <input {...control} name="forWhom" maxLength={120} dir="auto" required />}
      </Field>
      <Field
        id="why"
        label="Why"
        error={fields.why}
        hint="Stands on the page and in the record of acts; the client can see it was made."
      >
        {(control) => <textarea {...control} name="why" rows={2} maxLength={2000} dir="auto" required />}
      </Field>
      <Field id="summary" label="In your words, for the first page (may stay empty)" error={fields.summary}>
        {(control) => <textarea {...control} name="summary" rows={4} maxLength={4000} dir="auto" />}
      </Field>
      <div className={`${forms.inline} ${styles.pair}`}>
        <Field id="days" label="Ends after, days" error={fields.days} hint="1 to 30">
          {(control) => (
            <input {...control} name="days" inputMode="numeric" className={forms.short} defaultValue="14" />
          )}
        </Field>
        <Field id="period" label="How far back" error={fields.period}>
          {(control) => (
            <select {...control} name="period" defaultValue="half-year">
              <option value="quarter">13 weeks</option>
              <option value="half-year">26 weeks</option>
              <option value="year">A year</option>
              <option value="all">From the first day</option>
            </select>
          )}
        </Field>
      </div>
      <label className={forms.tick}>
        <input type="checkbox" checked={withPack} onChange={(event) => setWithPack(event.target.checked)} />
        The pack can be downloaded there as well
      </label>
      {withPack ? (
        <fieldset className={forms.fieldset}>
          <legend>Parts of the pack, beside the report</legend>
          <div className={styles.parts}>
            {PARTS.map(({ part, label, usual }) => (
              <label key={part} className={forms.tick}>
                <input type="checkbox" name="parts" value={part} defaultChecked={usual} />
                {label}
              </label>
            ))}
          </div>
        </fieldset>
      ) : null}
      <div className={forms.acts}>
        <button type="submit" className={forms.main} disabled={busy}>
          Make the link
        </button>
      </div>
    </form>
  );
}
