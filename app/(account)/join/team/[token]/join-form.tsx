'use client';

import { type FormEvent, useEffect, useState } from 'react';
import styles from '../../../account.module.css';

type Refusal = { error?: { message?: string; fields?: Record<string, string> } };
type Refused = { message: string; fields: Record<string, string> };

/** Posts in the background so that what was typed stays; without scripts the form itself is posted. */
export function JoinForm({ token, zones }: { token: string; zones: string[] }) {
  const [zone, setZone] = useState('UTC');
  const [busy, setBusy] = useState(false);
  const [refused, setRefused] = useState<Refused | null>(null);
  useEffect(() => {
    const own = Intl.DateTimeFormat().resolvedOptions().timeZone;
    if (zones.includes(own)) setZone(own);
  }, [zones]);

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    setBusy(true);
    const problem = await join(Object.fromEntries(new FormData(event.currentTarget)));
    if (problem === undefined) return window.location.assign('/');
    setBusy(false);
    setRefused(problem);
    const [field] = Object.keys(problem.fields);
    if (field) document.getElementById(field)?.focus();
  }
  return (
    <form action="/api/join/team" method="post" onSubmit={send} noValidate>
      <p role="alert" className={refused ? styles.said : undefined}>
        {refused && Object.keys(refused.fields).length === 0 ? refused.message : null}
        {refused && Object.keys(refused.fields).length > 0 ? 'Not sent yet: see the fields below.' : null}
      </p>
      <input type="hidden" name="token" value={token} />
      <div className={styles.field}>
        <label htmlFor="name">Name</label>
        <input
          id="name"
          name="name"
          autoComplete="name"
          maxLength={120}
          aria-describedby="name-error"
          required
        />
        <p id="name-error">{refused?.fields.name}</p>
      </div>
      <div className={styles.field}>
        <label htmlFor="password">Password, 12 characters or more</label>
        <input
          id="password"
          name="password"
          type="password"
          autoComplete="new-password"
          maxLength={128}
          aria-describedby="password-error"
          required
        />
        <p id="password-error">{refused?.fields.password}</p>
      </div>
      <div className={styles.field}>
        <label htmlFor="zone">Time zone: your mornings begin there</label>
        <select id="zone" name="zone" value={zone} onChange={(event) => setZone(event.target.value)}>
          {zones.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </select>
      </div>
      <button type="submit" className={styles.act} disabled={busy}>
        Come in
      </button>
    </form>
  );
}

/** Undefined when in, else what to tell. */
async function join(body: object): Promise<Refused | undefined> {
  const answer = await fetch('/api/join/team', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  }).catch(() => undefined);
  if (answer?.ok) return undefined;
  if (!answer) return { message: 'No connection. What you typed is still here: try again.', fields: {} };
  const { error } = (await answer.json().catch(() => ({}))) as Refusal;
  return {
    message: error?.message ?? 'This did not work. Try again in a minute.',
    fields: error?.fields ?? {},
  };
}
