import Link from 'next/link';
import { requireActor } from '#lib/auth/require-actor.ts';
import { COLUMN_LABELS, LIST_COLUMNS } from '#lib/views/client-list-columns.ts';
import styles from '../_parts/forms.module.css';
import { ImportList } from './import-list.tsx';

export const metadata = { title: 'Import clients' };

/** A list of clients, looked through before anything is written. */
export default async function ImportPage() {
  await requireActor('edit-clients');
  return (
    <main id="main" tabIndex={-1} className={styles.page}>
      <h1>Import a list of clients</h1>
      <p className={styles.lead}>
        Paste a list or choose a CSV file: the first line names the columns, parted by comma, semicolon or
        tab. Columns that are read: {LIST_COLUMNS.map((column) => COLUMN_LABELS[column]).join(', ')}; only the
        name is needed. Up to 500 rows and 1 MB. Nothing is written before you have seen every row.{' '}
        <Link href="/clients/new">Make one client by hand</Link>
      </p>
      <ImportList />
    </main>
  );
}
