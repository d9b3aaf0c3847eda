'use client';

import forms from '../../clients/_parts/forms.module.css';
import styles from './list.module.css';
import { useOutline } from './use-outline.ts';

type Props = { shelf: 'skill' | 'part'; rows: { id: string; name: string }[] };

/** Skills or parts that were retired, to put back. */
export function RetiredShelf({ shelf, rows }: Props) {
  const { send, busy, refused } = useOutline(() => undefined);
  if (rows.length === 0) return null;
  return (
    <div className={styles.retired}>
      <h3>Retired {shelf}s</h3>
      {refused ? (
        <p role="alert" className={forms.refusal}>
          {refused}
        </p>
      ) : null}
      <ul>
        {rows.map((row) => (
          <li key={row.id}>
            <span>{row.name}</span>
            <button
              type="button"
              className={forms.plain}
              aria-label={`Put ${row.name} back`}
              disabled={busy}
              onClick={() => send({ act: 'put-back', shelf, id: row.id })}
            >
              Put back
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
