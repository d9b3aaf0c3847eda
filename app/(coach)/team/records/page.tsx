import Link from 'next/link';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadRecords } from '#lib/usecases/rights/load-records.ts';
import forms from '../../clients/_parts/forms.module.css';
import { Aged } from './aged.tsx';
import { Asks, Erased } from './asks.tsx';
import styles from './records.module.css';
import { RetentionForm } from './retention-form.tsx';

export const metadata = { title: 'Records' };

/** How long records are kept, who is to be forgotten, what was deleted, and everything out. */
export default async function RecordsPage() {
  const actor = await requireActor('keep-records');
  const { retention, aged, asks, erased } = await loadRecords(actor, now());
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Records</h1>
      <p className={forms.lead}>
        What this team keeps about people, for how long, and how it leaves.{' '}
        <Link href="/team/audit">Record of acts: who looked, what was taken out or deleted</Link>
      </p>
      <h2>Everything out</h2>
      <p className={styles.said}>
        One file: a folder for each client with the whole record, and beside them the ladders, the numbers of
        the checks with every version, members, kept replies and nights. It comes at once and takes some
        minutes for a large team. It holds health data of everybody: keep it where nobody else can read it.
      </p>
      <p>
        <a href="/api/team/export" download className={forms.other}>
          Take everything out
        </a>
      </p>
      <h2>How long</h2>
      <RetentionForm retention={retention} />
      <h2>Years over, or within 30 days</h2>
      <Aged aged={aged} erases={retention.erases} />
      <h2>To be deleted</h2>
      <Asks asks={asks} />
      <h2>Deleted</h2>
      <Erased erased={erased} />
    </main>
  );
}
