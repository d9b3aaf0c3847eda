import Link from 'next/link';
import type { ClientRights } from '#lib/usecases/rights/load-client-rights.ts';
import { longDate } from '#lib/views/say-date.ts';
import forms from '../../_parts/forms.module.css';
import styles from './rights.module.css';

/** A deletion on its way, or the lead's way to ask for one. Plain forms: what cannot be undone needs no script. */
export function Deletion({ client, keeps }: { client: ClientRights; keeps: boolean }) {
  const { asked, id, name } = client;
  if (asked)
    return (
      <div className={styles.said}>
        <p>
          Everything of {name} is deleted on {longDate(asked.dueAt.toISOString().slice(0, 10))}.{' '}
          {whoAsked(asked)} Receipt{' '}
          <Link href={`/receipt/${asked.receipt}`} prefetch={false}>
            {asked.receipt}
          </Link>
          .
        </p>
        {keeps ? (
          <form action={`/api/clients/${id}/erasure/take-back`} method="post">
            <button type="submit" className={forms.other}>
              Take it back: keep the record
            </button>
          </form>
        ) : null}
      </div>
    );
  if (!keeps)
    return (
      <p className={styles.said}>
        {name} can ask for it on the phone, under Your data; a lead of the team can ask for it here.
      </p>
    );
  return (
    <details className={styles.said}>
      <summary>Delete everything of {name}</summary>
      <p>
        All rows, pictures and the sign-in are deleted in 7 days; until then you or {name} can take it back.
        After that nobody can bring it back. What stays: that a record was deleted, when, and how much, under
        a number without a name. Local rules may ask you to keep a record for some years, above all of
        somebody under 18: they come first.
      </p>
      <form action={`/api/clients/${id}/erasure`} method="post" className={forms.form}>
        <div className={forms.field}>
          <label htmlFor="words">Who asked for it, or why</label>
          <textarea id="words" name="words" rows={2} required maxLength={2000} dir="auto" />
        </div>
        <label className={forms.tick}>
          <input type="checkbox" name="sure" value="yes" required />
          Everything of {name} is to be deleted
        </label>
        <div className={forms.acts}>
          <button type="submit" className={forms.main}>
            Delete it in 7 days
          </button>
        </div>
      </form>
    </details>
  );
}

function whoAsked({ origin, by, words }: NonNullable<ClientRights['asked']>): string {
  const said = words ? `: “${words}”` : '';
  switch (origin) {
    case 'client':
      return 'Asked for on the phone.';
    case 'guardian':
      return 'Asked for by the parent or guardian.';
    case 'lead':
      return `Asked for by ${by ?? 'a lead'}${said}.`;
    case 'retention':
      return 'The years of the team are over.';
  }
}
