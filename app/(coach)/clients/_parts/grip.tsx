import type { KeyboardEventHandler, PointerEventHandler } from 'react';
import styles from './grip.module.css';

type Props = { label: string; onKeyDown: KeyboardEventHandler; onPointerDown: PointerEventHandler };

/** Three lines to take hold of. */
export function Grip({ label, onKeyDown, onPointerDown }: Props) {
  return (
    <button
      type="button"
      className={styles.grip}
      aria-label={label}
      onKeyDown={onKeyDown}
      onPointerDown={onPointerDown}
    >
      <svg width="12" height="18" viewBox="0 0 12 18" aria-hidden="true">
        <path d="M1 3.5h10M1 9h10M1 14.5h10" stroke="currentColor" strokeWidth="1.8" />
      </svg>
    </button>
  );
}
