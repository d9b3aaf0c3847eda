'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { HEALTH_LABELS, HEALTH_QUESTIONS } from '#lib/domain/intake/health-questions.ts';
import { asSentence } from '#lib/domain/labels.ts';
import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import { postJson } from '../../_parts/post-json.ts';
import styles from './intake.module.css';

type Refused = { message: string; fields: Record<string, string> };
const FIELDS = {
  healthYes: 'a health question: now a yes',
  week: 'the usual week',
  bodyMassKg: 'body mass',
  birthYear: 'year of birth',
  breakWeeks: 'weeks without training',
  otherSport: 'other sport',
  job: 'work',
  goal: 'what is wanted, in words',
} as const;

/** One answer changed on the client's word; what was told before stays beside it. */
export function ChangeForm({ clientId, name }: { clientId: string; name: string }) {
  const router = useRouter();
  const [field, setField] = useState<keyof typeof FIELDS>('healthYes');
  const [refused, setRefused] = useState<Refused | null>(null);
  const [said, setSaid] = useState('');
  const error = (key: string) => refused?.fields[key];

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = event.currentTarget;
    const { why, value, ...week } = Object.fromEntries(
      [...new FormData(form)].map(([key, typed]) => [key, String(typed)]),
    );
    const answer = await postJson(`/api/clients/${clientId}/intake`, {
      field,
      why: why ?? '',
      value: field === 'week' ? week : (value ?? ''),
    });
    setSaid(answer.ok ? 'Changed. What was told before stays beside it.' : answer.message);
    setRefused(answer.ok ? null : answer);
    if (answer.ok) {
      form.reset();
      router.refresh();
    }
  }

  const text = (key: string, label: string, hint?: string) => (
    <Field
      id={`change-${key}`}
      label={label}
      error={error(key) ?? error(`value.${key}`)}
      {...(hint && { hint })}
    >
      {(control) => <input {...control} name={key} inputMode="decimal" autoComplete="off" />}
    </Field>
  );
  return (
    <details className={styles.fold}>
      <summary>Change an answer on the word of {name}</summary>
      <form onSubmit={send} noValidate className={forms.form}>
        <Field
          id="change-field"
          label="What changes"
          hint="A yes to a health question is taken back by a clinician’s word only"
        >
          {(control) => (
            <select
              {...control}
              value={field}
              onChange={(event) => {
                setField(event.target.value as keyof typeof FIELDS);
                setRefused(null);
              }}
            >
              {Object.entries(FIELDS).map(([key, label]) => (
                <option key={key} value={key}>
                  {label}
                </option>
              ))}
            </select>
          )}
        </Field>
        {field === 'week' ? (
          <>
            {text('days', 'Days a week')}
            {text('minutes', 'Minutes a session')}
            {text('effort', 'How hard, 0 to 10')}
          </>
        ) : null}
        {field === 'healthYes' ? (
          <Field id="change-value" label="Which" error={error('value')}>
            {(control) => (
              <select {...control} name="value">
                {HEALTH_QUESTIONS.map((question) => (
                  <option key={question} value={question}>
                    {asSentence(HEALTH_LABELS[question])}
                  </option>
                ))}
              </select>
            )}
          </Field>
        ) : null}
        {field !== 'week' && field !== 'healthYes' ? text('value', 'Now') : null}
        <Field id="change-why" label="Why, for the record" error={error('why')}>
          {(control) => <input {...control} name="why" autoComplete="off" />}
        </Field>
        <div className={forms.acts}>
          <button type="submit" className={forms.main}>
            Change it
          </button>
          <span role="status">{said}</span>
        </div>
      </form>
    </details>
  );
}
