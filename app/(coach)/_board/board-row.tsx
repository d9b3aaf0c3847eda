'use client';
import Link from 'next/link';
import { Mark } from '#app/_ui/marks.tsx';
import { Strip } from '#app/_ui/strip.tsx';
import type { ShownRow } from '#lib/views/board-draw.ts';
import { choose, useIsChosen } from './acts-store.ts';
import { OtherReasons } from './other-reasons.tsx';
import styles from './row.module.css';
import { RowShell } from './row-shell.tsx';

/** What is read of a row; the shell around it acts. */
export function BoardRow({ row, canAct }: { row: ShownRow; canAct: boolean }) {
  return (
    <RowShell row={row} canAct={canAct}>
      <div className={styles.client}>
        <div className={styles.marks}>
          <Mark tier={row.tier} />
          {canAct && !row.onlyQuestion && <Tick clientId={row.clientId} name={row.name} />}
        </div>
        <div>
          <h3>
            <Link href={`/clients/${row.clientId}`} prefetch={false} data-open className={styles.name}>
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
        <OtherReasons since={row.since} others={row.others} />
      </div>
      <div className={styles.strip}>
        <Strip paths={row.strip.paths} spoken={row.strip.spoken} />
      </div>
    </RowShell>
  );
}

/** Chooses the row for an act on several. */
function Tick({ clientId, name }: { clientId: string; name: string }) {
  const chosen = useIsChosen(clientId);
  return (
    <label className={styles.tick} data-chosen={chosen || undefined}>
      <input
        type="checkbox"
        data-tick
        checked={chosen}
        aria-label={`Choose ${name}`}
        onChange={(event) => choose(clientId, event.target.checked)}
      />
    </label>
  );
}
