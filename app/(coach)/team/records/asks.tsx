import Link from 'next/link';
import type { TeamRecords } from '#lib/usecases/rights/load-records.ts';
import { exactDate } from '#lib/views/say-date.ts';
import { KeepOn } from './aged.tsx';
import styles from './records.module.css';

const day = (at: Date) => exactDate(at.toISOString().slice(0, 10));
const ORIGIN: Readonly<Record<string, string>> = {
  client: 'asked by the client',
  guardian: 'asked by a parent or guardian',
  lead: 'asked by a lead',
  retention: 'years over',
};

export function Asks({ asks }: { asks: TeamRecords['asks'] }) {
  if (asks.length === 0) return <p className={styles.said}>Nobody asked to be deleted.</p>;
  return (
    <ul className={styles.list}>
      {asks.map((ask) => (
        <li key={ask.id}>
          <span>
            <Link href={`/clients/${ask.clientId}/rights`}>{ask.name}</Link>: deleted on {day(ask.dueAt)},{' '}
            {ORIGIN[ask.origin]} on {day(ask.askedAt)}
            {ask.words ? `: “${ask.words}”` : ''}.
          </span>
          <KeepOn clientId={ask.clientId} name={ask.name} />
        </li>
      ))}
    </ul>
  );
}

export function Erased({ erased }: { erased: TeamRecords['erased'] }) {
  if (erased.length === 0) return <p className={styles.said}>Nothing was deleted yet.</p>;
  return (
    <ul className={styles.list}>
      {erased.map((one) => (
        <li key={one.receipt}>
          <span>
            {day(one.erasedAt)}, {ORIGIN[one.origin]}: {one.rows.toLocaleString('en-GB')} rows and {one.files}{' '}
            {one.files === 1 ? 'picture' : 'pictures'}. Receipt{' '}
            <Link href={`/receipt/${one.receipt}`} prefetch={false}>
              {one.receipt}
            </Link>
          </span>
        </li>
      ))}
    </ul>
  );
}
