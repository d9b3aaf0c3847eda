'use client';
import styles from './team.module.css';
import type { TeamAct } from './use-team-act.ts';

/** What came of an act, with its way back. */
export function ActSaid({ line, back, busy, undo }: Pick<TeamAct, 'line' | 'back' | 'busy' | 'undo'>) {
  return (
    <p className={styles.said}>
      <span role="status">{line}</span>
      {back && (
        <button type="button" data-undo disabled={busy} onClick={() => void undo()}>
          Undo
        </button>
      )}
    </p>
  );
}
