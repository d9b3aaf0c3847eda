import Link from 'next/link';
import type { TeamRecords } from '#lib/usecases/rights/load-records.ts';
import { exactDate } from '#lib/views/say-date.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from './records.module.css';

const day = (at: Date) => exactDate(at.toISOString().slice(0, 10));

/** Clients who left, with the day from which their record may go. */
export function Aged({ aged, erases }: { aged: TeamRecords['aged']; erases: boolean }) {
  if (aged.length === 0) return <p className={styles.said}>Nobody’s years are over.</p>;
  return (
    <ul className={styles.list}>
      {aged.map(({ clientId, name, leftAt, keptUntil, dueAt }) => (
        <li key={clientId}>
          <span>
            <Link href={`/clients/${clientId}/rights`}>{name}</Link> left on {day(leftAt)}; kept until{' '}
            {day(keptUntil)}.{' '}
            {dueAt
              ? `Deleted on ${day(dueAt)}.`
              : erases
                ? 'Announced within the hour, unless it was kept on.'
                : 'Not deleted by itself.'}
          </span>
          {dueAt ? <KeepOn clientId={clientId} name={name} /> : null}
        </li>
      ))}
    </ul>
  );
}

export function KeepOn({ clientId, name }: { clientId: string; name: string }) {
  return (
    <form action={`/api/clients/${clientId}/erasure/take-back`} method="post">
      <button type="submit" className={forms.plain} aria-label={`Keep the record of ${name}`}>
        Keep it
      </button>
    </form>
  );
}
