'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import { postJson } from '../../_parts/post-json.ts';
import styles from './intake.module.css';

type Props = { clientId: string; told: string; what: string; today: string };
type Refused = { message: string; fields: Record<string, string> };

/** Who said what, and when: the only way to end what a yes holds. */
export function ToldWordForm({ clientId, told, what, today }: Props) {
  const router = useRouter();
  const [refused, setRefused] = useState<Refused | null>(null);
  const [said, setSaid] = useState('');
  const error = (name: string) => refused?.fields[name];
  const id = (name: string) => `${told.replace(':', '-')}-${name}`;

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const typed = Object.fromEntries(
      [...new FormData(event.currentTarget)].map(([name, value]) => [name, String(value)]),
    );
    const answer = await postJson(`/api/clients/${clientId}/intake/word`, { ...typed, told });
    setSaid(answer.ok ? 'Recorded.' : answer.message);
    setRefused(answer.ok ? null : answer);
    if (answer.ok) router.refresh();
  }

  return (
    <details className={styles.fold}>
      <summary>Record a clinician’s word about this</summary>
      <form onSubmit={send} noValidate className={forms.form} aria-label={`A clinician’s word: ${what}`}>
        <Field
          id={id('clinician')}
          label="Who said it"
          hint="Name and what they are"
          error={error('clinician')}
        >
          {(control) => <input {...control} name="clinician" autoComplete="off" />}
        </Field>
        <Field id={id('date')} label="When" error={error('date')}>
          {(control) => <input {...control} name="date" type="date" defaultValue={today} />}
        </Field>
        <Field id={id('lifts')} label="Does it allow the work?" error={error('lifts')}>
          {(control) => (
            <select {...control} name="lifts" defaultValue="">
              <option value="">choose</option>
              <option value="yes">Yes: what is held may begin</option>
              <option value="no">No: it stays held</option>
            </select>
          )}
        </Field>
        <Field id={id('words')} label="What was said" error={error('words')}>
          {(control) => <textarea {...control} name="words" rows={3} />}
        </Field>
        <Field
          id={id('review')}
          label="Looks again by"
          hint="Held again from the day after. Empty: no date was named"
          error={error('reviewOn')}
        >
          {(control) => <input {...control} name="reviewOn" type="date" />}
        </Field>
        <div className={forms.acts}>
          <button type="submit" className={forms.main}>
            Record the word
          </button>
          <span role="status">{said}</span>
        </div>
      </form>
    </details>
  );
}
