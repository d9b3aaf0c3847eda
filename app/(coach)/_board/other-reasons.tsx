import type { SaidDate } from '#lib/views/board-types.ts';
import styles from './row.module.css';

const SHOWN = 4;

/** Since when, and everything else that is owed, in a few words each; what does not fit opens in place. */
export function OtherReasons({ since, others }: { since: SaidDate; others: string[] }) {
  const fits = others.length <= SHOWN ? others : others.slice(0, SHOWN - 1);
  const rest = others.slice(fits.length);
  return (
    <div className={styles.others}>
      <span title={since.exact}>since {since.said}</span>
      {fits.map((words) => (
        <span key={words}>{words}</span>
      ))}
      {rest.length > 0 && (
        <details className={styles.rest}>
          <summary>{rest.length} more</summary>
          <ul>
            {rest.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
