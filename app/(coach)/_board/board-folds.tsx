import Link from 'next/link';
import { Stills } from '#app/_ui/stills.tsx';
import type { BoardView, Waiting } from '#lib/views/board-types.ts';
import styles from './board.module.css';

/** Everybody who has no row, counted and folded: nobody is hidden in "nothing new". */
export function BoardFolds({ board }: { board: BoardView }) {
  return (
    <div className={styles.folds}>
      <Fold word="Nothing new" list={board.nothingNew} />
      <Fold word="With the client" list={board.withClient} />
      <Fold word="Put aside" list={board.aside} />
      {board.questions.length > 0 && <Fold word="Question waiting" list={board.questions} />}
      <Fold word="Not checked" list={board.notChecked} />
    </div>
  );
}

function Fold({ word, list }: { word: string; list: Waiting[] }) {
  if (list.length === 0) {
    return (
      <p className={styles.fold}>
        {word}: <b>0</b>
      </p>
    );
  }
  return (
    <details className={styles.fold}>
      <summary>
        {word}: <b>{list.length}</b>
      </summary>
      <ul>
        {list.map((one) => (
          <li key={one.clientId}>
            <Link href={`/clients/${one.clientId}`}>{one.name}</Link> <span>{one.words}</span>
            <Stills ids={one.stills ?? []} />
          </li>
        ))}
      </ul>
    </details>
  );
}
