import styles from './the-line.module.css';

/**
 * The vertical line: now. Left of it stands what happened, right of it what to do. It hangs from the top of the
 * coach's frame at the same x on every page that has it; one per screen.
 */
export function TheLine({ bob = 'small' }: { bob?: 'small' | 'large' }) {
  return (
    <div className={styles.line} aria-hidden="true" data-bob={bob}>
      <svg className={styles.bob} viewBox="0 0 27 71" fill="var(--bob)" aria-hidden="true">
        <path d="M9 0h9l1 10.5H8z" />
        <path d="M1.5 12h24v5.5h-24z" />
        <path d="M0 19h27c0 14-5 25.500-9 35H9C5 44.500 0 33 0 19z" />
        <path d="M9.700 56h7.600L13.500 71z" />
      </svg>
    </div>
  );
}
