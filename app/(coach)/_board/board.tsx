import { TheLine } from '#app/_ui/the-line.tsx';
import type { BoardView } from '#lib/views/board-types.ts';
import styles from './board.module.css';
import { BoardFolds } from './board-folds.tsx';
import { BoardGroup } from './board-group.tsx';
import { BoardHead } from './board-head.tsx';
import { BoardKeys } from './board-keys.tsx';
import { Filters } from './filters.tsx';
import { QuietMorning } from './quiet-morning.tsx';
import { StripKey } from './strip-key.tsx';

type Props = {
  board: BoardView;
  /** As the address says it: a member's id or "mine". */
  coach: string | undefined;
  canAct: boolean;
};

export function Board({ board, coach, canAct }: Props) {
  const withRows = board.state === 'rows' || board.state === 'filtered';
  return (
    <main id="main" className={styles.board} data-quiet={withRows ? undefined : true}>
      {withRows ? <BoardHead board={board} /> : <QuietMorning board={board} />}
      {withRows && (
        <div className={styles.columns}>
          <Filters options={board.options} filter={{ ...board.filter, coach }} />
          <StripKey from={board.stripFrom} to={board.stripTo} />
          <p className={styles.toDo}>Proposed next step</p>
        </div>
      )}
      {board.groups.map((group) => (
        <BoardGroup key={group.tier} group={group} canAct={canAct} />
      ))}
      {board.state === 'filtered' && (
        <p className={styles.filtered}>
          Nobody stands under this filter; it hides {board.hidden} of {board.hidden} clients with something
          open. <a href="/">Show all</a>
        </p>
      )}
      <BoardFolds board={board} />
      <BoardKeys />
      <TheLine bob={withRows ? 'small' : 'large'} />
    </main>
  );
}
