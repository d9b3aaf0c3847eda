import Link from 'next/link';
import { Mark } from '#app/_ui/marks.tsx';
import type { ShownRow } from '#lib/views/board-draw.ts';
import styles from './row.module.css';

/** A row in one line: what was done with it, or with which words it was folded as known. */
export function RowKnown({ row, line }: { row: ShownRow; line: string | undefined }) {
  if (line !== undefined)
    return (
      <>
        <p className={styles.foldedName}>{row.name}</p>
        <p className={styles.foldedLine}>{line}</p>
      </>
    );
  return (
    <>
      <div className={styles.knownName}>
        <Mark tier={row.tier} />
        <h3>
          <Link href={`/clients/${row.clientId}`} prefetch={false} data-open className={styles.name}>
            {row.name}
          </Link>
        </h3>
      </div>
      <p className={styles.foldedLine} title={row.sentence.map((part) => part.text).join('')}>
        known: {row.known}
      </p>
    </>
  );
}
