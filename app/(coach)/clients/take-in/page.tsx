import Link from 'next/link';
import { requireActor } from '#lib/auth/require-actor.ts';
import styles from '../_parts/forms.module.css';
import { TakeInForm } from './take-in-form.tsx';

export const metadata = { title: 'Take a client in' };

/** A client of another team, from the pack that team made; looked through before anything is written. */
export default async function TakeInPage() {
  await requireActor('edit-clients');
  return (
    <main id="main" tabIndex={-1} className={styles.page}>
      <h1>Take a client in</h1>
      <p className={styles.lead}>
        Choose the handover pack that the other team made: one zip, with the lossless record in it. Each file
        is held against its sum, and you see who and what comes before anything is written. The client becomes
        yours, with everything as it was; your team asks its own consent. A list of new clients goes{' '}
        <Link href="/clients/import">another way</Link>.
      </p>
      <TakeInForm />
    </main>
  );
}
