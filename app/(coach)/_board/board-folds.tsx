import type { BoardView } from '#lib/views/board-types.ts';
import styles from './board.module.css';
import { Fold } from './fold.tsx';

type Props = { board: Omit<BoardView, 'groups'>; query: string };

/** Everybody who has no row, counted and folded: nobody is hidden in "nothing new". */
export function BoardFolds({ board, query }: Props) {
  const { gettingToKnow, gettingToKnowWords } = board;
  return (
    <div className={styles.folds}>
      <Fold word="Nothing new" name="nothingNew" list={board.nothingNew} query={query} />
      {gettingToKnow.length > 0 && (
        <Fold
          word="Getting to know"
          says={gettingToKnowWords}
          name="gettingToKnow"
          list={gettingToKnow}
          query={query}
        />
      )}
      <Fold word="With the client" name="withClient" list={board.withClient} query={query} />
      <Fold word="Put aside" name="aside" list={board.aside} query={query} />
      {board.questions.length > 0 && (
        <Fold word="Question put aside" name="questions" list={board.questions} query={query} />
      )}
      <Fold word="Not checked" name="notChecked" list={board.notChecked} query={query} />
    </div>
  );
}
