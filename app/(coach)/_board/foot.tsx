'use client';
import { useActs, useChosen } from './acts-store.ts';
import { BoardNews } from './board-news.tsx';
import { BulkForm } from './bulk-form.tsx';
import styles from './foot.module.css';
import { LastAct } from './last-act.tsx';

type Props = { prints: string; query: string };

/** What stays in view at the foot of the window: news of the board, the chosen rows, the last act with its undo. */
export function BoardFoot({ prints, query }: Props) {
  const chosen = useChosen();
  const last = useActs().at(-1);
  return (
    <div className={styles.foot}>
      {chosen.size > 0 && <BulkForm chosen={chosen} />}
      <div className={styles.line}>
        <BoardNews prints={prints} query={query} />
        {last && <LastAct act={last} />}
      </div>
    </div>
  );
}
