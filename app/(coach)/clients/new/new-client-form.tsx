'use client';

import { type FormEvent, useEffect, useState } from 'react';
import { Field } from '../_parts/field.tsx';
import styles from '../_parts/forms.module.css';
import { InvitationLink } from '../_parts/invitation-link.tsx';
import { postJson, textIn } from '../_parts/post-json.ts';

type Refused = { message: string; fields: Record<string, string> };

export function NewClientForm({ zones }: { zones: string[] }) {
  const [zone, setZone] = useState('UTC');
  const [refused, setRefused] = useState<Refused | null>(null);
  const [busy, setBusy] = useState(false);
  const [made, setMade] = useState<{ id: string; name: string } | null>(null);
  const error = (path: string) => refused?.fields[path];

  useEffect(() => {
    const own = Intl.DateTimeFormat().resolvedOptions().timeZone;
    if (zones.includes(own)) setZone(own);
  }, [zones]);

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    setBusy(true);
    const form = new FormData(event.currentTarget);
    const text = (name: string) => String(form.get(name) ?? '');
    const answer = await postJson('/api/clients', {
      name: text('name'),
      email: text('email'),
      zone,
      under18: form.get('under18') === 'on',
      goal: text('goal'),
      usualSessionMinutes: text('usualSessionMinutes'),
      toldWeek: { days: text('days'), minutes: text('minutes'), effort: text('effort') },
    });
    setBusy(false);
    if (answer.ok) setMade({ id: textIn(answer.value, 'clientId'), name: text('name') });
    else setRefused(answer);
  }

  if (made) {
    return (
      <section aria-labelledby="made">
        <h2 id="made">{made.name} is made</h2>
        <InvitationLink clientId={made.id} atOnce />
        <div className={styles.acts} style={{ marginTop: 20 }}>
          <a className={styles.main} href={`/clients/${made.id}/plan`}>
            Write the plan
          </a>
          <a className={styles.other} href={`/clients/${made.id}`}>
            Open the client page
          </a>
        </div>
      </section>
    );
  }

  return (
    <form className={styles.form} onSubmit={send} noValidate>
      {refused ? (
        <p role="alert" className={styles.refusal}>
          {refused.message}
        </p>
      ) : null}
      <Field id="name" label="Name" error={error('name')}>
        {(control) => <input {...control} name="name" autoComplete="off" required />}
      </Field>
      <Field id="email" label="E-mail, if you want the link mailed" error={error('email')}>
        {(control) => <input {...control} name="email" type="email" autoComplete="off" />}
      </Field>
      <Field
        id="zone"
        label="Time zone"
        hint="Where the client lives: days and nights are counted there."
        error={error('zone')}
      >
        {(control) => (
          <select {...control} name="zone" value={zone} onChange={(event) => setZone(event.target.value)}>
            {zones.map((name) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        )}
      </Field>
      <label className={styles.tick}>
        <input type="checkbox" name="under18" /> Under 18
      </label>
      <Field id="goal" label="Goal, in the client’s words" error={error('goal')}>
        {(control) => <textarea {...control} name="goal" rows={2} />}
      </Field>
      <Field id="usualSessionMinutes" label="Usual session, minutes" error={error('usualSessionMinutes')}>
        {(control) => (
          <input {...control} name="usualSessionMinutes" inputMode="numeric" className={styles.short} />
        )}
      </Field>
      <fieldset className={styles.fieldset}>
        <legend>Usual week as told, until four weeks are known</legend>
        <div className={styles.inline}>
          <Field id="days" label="Days a week" error={error('toldWeek.days')}>
            {(control) => <input {...control} name="days" inputMode="numeric" className={styles.short} />}
          </Field>
          <Field id="minutes" label="Minutes a day" error={error('toldWeek.minutes')}>
            {(control) => <input {...control} name="minutes" inputMode="numeric" className={styles.short} />}
          </Field>
          <Field id="effort" label="How hard, 0-10" error={error('toldWeek.effort')}>
            {(control) => <input {...control} name="effort" inputMode="decimal" className={styles.short} />}
          </Field>
        </div>
      </fieldset>
      <div className={styles.acts}>
        <button type="submit" className={styles.main} disabled={busy}>
          Make the client
        </button>
      </div>
    </form>
  );
}
