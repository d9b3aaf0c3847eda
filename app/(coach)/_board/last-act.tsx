'use client';
import { useRouter } from 'next/navigation';
import type { KeptAct } from './acts-store.ts';
import styles from './foot.module.css';
import { useAct } from './use-act.ts';

/** The newest act on this page: it can be undone from here also when its row is gone. */
export function LastAct({ act }: { act: KeptAct }) {
  const router = useRouter();
  const { busy, problem, undo } = useAct();
  async function takeBack() {
    const row = document.querySelector<HTMLElement>(`[data-row="${[...act.lines.keys()][0]}"]`);
    if (!(await undo(act.actId))) return;
    if (row) requestAnimationFrame(() => row.focus());
    else router.refresh();
  }
  return (
    <div className={styles.last}>
      <p>
        {act.whom && <b>{act.whom}: </b>}
        {act.line}
      </p>
      <button type="button" data-undo-last onClick={takeBack} disabled={busy}>
        <u>U</u>ndo
      </button>
      <p role="status">{problem}</p>
    </div>
  );
}
