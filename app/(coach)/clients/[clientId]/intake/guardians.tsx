'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import type { StartPage } from '#lib/usecases/intake/load-start-page.ts';
import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import { postJson, textIn } from '../../_parts/post-json.ts';
import styles from './intake.module.css';

type Props = { page: Pick<StartPage, 'id' | 'name' | 'guardians' | 'guardiansAgree'>; mayInvite: boolean };
type Refused = { message: string; fields: Record<string, string> };

/** Under 18: who was named, how they stand to it, and the link of each. */
export function Guardians({ page, mayInvite }: Props) {
  const router = useRouter();
  const [refused, setRefused] = useState<Refused | null>(null);

  async function name(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = event.currentTarget;
    const typed = Object.fromEntries([...new FormData(form)].map(([key, value]) => [key, String(value)]));
    const answer = await postJson(`/api/clients/${page.id}/guardians`, typed);
    setRefused(answer.ok ? null : answer);
    if (!answer.ok) return;
    form.reset();
    router.refresh();
  }

  return (
    <section aria-labelledby="guardians">
      <h2 id="guardians">Parent or guardian</h2>
      <p className={styles.said}>
        {page.guardiansAgree
          ? `${page.name} is under 18, and a parent or guardian agrees.`
          : `${page.name} is under 18. Training does not begin before a parent or guardian agrees by a link of their own.`}
      </p>
      <ul className={styles.lines}>
        {page.guardians.map((guardian) => (
          <li key={guardian.id}>
            <strong>{guardian.name}</strong>: {guardian.state}.{' '}
            {guardian.email ?? 'No address: no mails, tell them yourself when something hurts much.'}
            {mayInvite ? <LinkAct id={guardian.id} email={guardian.email} /> : null}
          </li>
        ))}
      </ul>
      {mayInvite ? (
        <details className={styles.fold}>
          <summary>Name a parent or guardian</summary>
          <form onSubmit={name} noValidate className={forms.form}>
            <Field id="guardian-name" label="Name" error={refused?.fields.name}>
              {(control) => <input {...control} name="name" autoComplete="off" />}
            </Field>
            <Field
              id="guardian-email"
              label="E-mail address"
              hint="Empty: you hand the link over yourself, and no mails are sent"
              error={refused?.fields.email}
            >
              {(control) => <input {...control} name="email" type="email" autoComplete="off" />}
            </Field>
            <div className={forms.acts}>
              <button type="submit" className={forms.main}>
                Name them
              </button>
              <span role="status">{refused?.message ?? ''}</span>
            </div>
          </form>
        </details>
      ) : null}
    </section>
  );
}

function LinkAct({ id, email }: { id: string; email: string | null }) {
  const router = useRouter();
  const [url, setUrl] = useState('');
  const [said, setSaid] = useState('');
  const make = async () => {
    const answer = await postJson(`/api/guardians/${id}/link`, {});
    setSaid(answer.ok ? (email ? `Mailed to ${email} too.` : 'Hand it over yourself.') : answer.message);
    if (!answer.ok) return;
    setUrl(textIn(answer.value, 'url'));
    router.refresh();
  };
  return (
    <div className={forms.acts}>
      {url ? (
        <output className={forms.link} aria-label="Link of the parent or guardian">
          {url}
        </output>
      ) : (
        <button type="button" className={forms.other} onClick={make}>
          {email ? 'Make and mail the link' : 'Make the link'}
        </button>
      )}
      <span role="status">{said}</span>
    </div>
  );
}
