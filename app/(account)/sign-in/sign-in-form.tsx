'use client';

import { type FormEvent, useRef, useState } from 'react';
import styles from '../account.module.css';

type Refusal = { error?: { message?: string } };

/** Posts in the background so that what was typed stays; without scripts the form itself is posted. */
export function SignInForm({ said }: { said: string | undefined }) {
  const [message, setMessage] = useState(said);
  const [busy, setBusy] = useState(false);
  const password = useRef<HTMLInputElement>(null);

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    setBusy(true);
    const refused = await signIn({ email: form.get('email'), password: form.get('password') });
    if (refused === undefined) {
      window.location.assign('/');
      return;
    }
    setBusy(false);
    setMessage(refused);
    password.current?.select();
  }

  return (
    <form action="/api/sign-in" method="post" onSubmit={send} aria-describedby={message ? 'said' : undefined}>
      <p id="said" role="alert" className={message ? styles.said : undefined}>
        {message}
      </p>
      <div className={styles.field}>
        <label htmlFor="email">E-mail</label>
        <input id="email" name="email" type="email" autoComplete="username" required maxLength={254} />
      </div>
      <div className={styles.field}>
        <label htmlFor="password">Password</label>
        <input
          ref={password}
          id="password"
          name="password"
          type="password"
          autoComplete="current-password"
          required
          maxLength={128}
        />
      </div>
      <button type="submit" className={styles.act} aria-disabled={busy}>
        Sign in
      </button>
    </form>
  );
}

/** Undefined when signed in, else what to tell. */
async function signIn(body: unknown): Promise<string | undefined> {
  const answer = await fetch('/api/auth/sign-in/email', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  }).catch(() => undefined);
  if (answer?.ok) return undefined;
  if (!answer) return 'No connection. What you typed is still here: try again when you are online.';
  const refusal = (await answer.json().catch(() => ({}))) as Refusal;
  return refusal.error?.message ?? 'Signing in did not work. Try again in a minute.';
}
