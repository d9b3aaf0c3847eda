import { shortDate } from '#lib/views/say-date.ts';
import styles from './board.module.css';

/** The head of the strips: first and last day, and what each of the three marks is. */
export function StripKey({ from, to }: { from: string; to: string }) {
  return (
    <p className={styles.stripKey}>
      <span>{shortDate(from)}</span>
      <span>
        <svg width="14" height="10" viewBox="0 0 14 10" fill="none" aria-hidden="true">
          <path d="M0 8h7V3h7" stroke="var(--ink)" strokeWidth="2" />
        </svg>{' '}
        rung
      </span>
      <span>
        <svg width="16" height="10" viewBox="0 0 16 10" fill="none" aria-hidden="true">
          <path d="M1 8l5-1 4-4 5 3" stroke="var(--pain)" strokeWidth="2" />
        </svg>{' '}
        pain
      </span>
      <span>
        <svg width="13" height="10" viewBox="0 0 13 10" fill="none" aria-hidden="true">
          <path d="M0 3h6v7H0zM7 2h6v8H7z" fill="var(--tint)" />
          <path d="M0 3h6M7 2h6" stroke="var(--edge)" strokeWidth="1.6" />
        </svg>{' '}
        load
      </span>
      <span>{shortDate(to)}</span>
    </p>
  );
}
