import type { DrawnBoard } from '#lib/views/board-types.ts';
import { MINUTES_SAID, timeWords } from '#lib/views/board-words.ts';
import styles from './board.module.css';
import { NightWords } from './night-words.tsx';

export function BoardHead({ board }: { board: DrawnBoard }) {
  return (
    <div className={styles.head}>
      <div>
        <h1>{board.headline}</h1>
        {board.people > 0 && (
          <details className={styles.estimate}>
            <summary>
              {board.people === 1 ? '1 person' : `${board.people} people`}, {timeWords(board.minutes)}
              {board.hidden > 0 && `; the filter hides ${board.hidden} more`}
            </summary>
            <p>{MINUTES_SAID}</p>
          </details>
        )}
      </div>
      <NightWords night={board.night} />
    </div>
  );
}
