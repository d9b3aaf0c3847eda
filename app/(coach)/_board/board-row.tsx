import Link from 'next/link';
import { Mark } from '#app/_ui/marks.tsx';
import { Strip } from '#app/_ui/strip.tsx';
import type { BoardRow as Row } from '#lib/views/board-types.ts';
import styles from './row.module.css';
import { RowShell } from './row-shell.tsx';

/** What is read of a row is made on the server; the shell around it acts. */
export function BoardRow({ row, canAct }: { row: Row; canAct: boolean }) {
  return (
    <RowShell
      clientId={row.clientId}
      name={row.name}
      step={row.step}
      questions={row.questions}
      needsWords={row.needsWords}
      nextCheckIn={row.nextCheckIn}
      canAct={canAct}
    >
      <div className={styles.client}>
        <Mark tier={row.tier} />
        <div>
          <h3>
            <Link href={`/clients/${row.clientId}`} data-open className={styles.name}>
              {row.name}
            </Link>
          </h3>
          <p className={styles.sub} title={row.checkedIn.exact}>
            {row.checkedIn.said}
          </p>
          {row.seen && <p className={styles.sub}>{row.seen}</p>}
        </div>
      </div>
      <div className={styles.reason} data-tier={row.tier}>
        <p className={styles.sentence}>
          {row.sentence.map((part) => (part.heavy ? <b key={part.text}>{part.text}</b> : part.text))}
        </p>
        <p className={styles.others}>
          <span title={row.since.exact}>since {row.since.said}</span>
          {row.others.map((words) => (
            <span key={words}>{words}</span>
          ))}
        </p>
      </div>
      <div className={styles.strip}>
        <Strip strip={row.strip} />
      </div>
    </RowShell>
  );
}
