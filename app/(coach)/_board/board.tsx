import { TheLine } from '#app/_ui/the-line.tsx';
import { printOf } from '#lib/views/board-print.ts';
import { queryOf } from '#lib/views/board-query.ts';
import type { DrawnBoard } from '#lib/views/board-types.ts';
import styles from './board.module.css';
import { BoardFolds } from './board-folds.tsx';
import { BoardGroup } from './board-group.tsx';
import { BoardHead } from './board-head.tsx';
import { BoardKeys } from './board-keys.tsx';
import { Filters } from './filters.tsx';
import { BoardFoot } from './foot.tsx';
import { QuietMorning } from './quiet-morning.tsx';
import { StripKey } from './strip-key.tsx';
import { TeamLines } from './team-lines.tsx';
import { Views } from './views.tsx';

type Props = {
  board: DrawnBoard;
  /** The filters that this member keeps under a name. */
  views: { id: string; name: string; query: string }[];
  /** As the address says it: a member's id or "mine". */
  coach: string | undefined;
  canAct: boolean;
  lines: { words: string; href: string | null }[];
};

export function Board({ board, views, coach, canAct, lines }: Props) {
  const withRows = board.state === 'rows' || board.state === 'filtered';
  const filter = { ...board.filter, coach };
  const query = queryOf(filter);
  const stamp = printOf(board.prints);
  return (
    <main id="main" className={styles.board} data-quiet={withRows ? undefined : true}>
      <TeamLines lines={lines} />
      {withRows ? <BoardHead board={board} /> : <QuietMorning board={board} />}
      <Views key={`${query} ${views.length}`} kept={views} query={query} />
      {withRows && (
        <div className={styles.columns}>
          <Filters options={board.options} filter={filter} />
          <StripKey from={board.stripFrom} to={board.stripTo} />
          <p className={styles.toDo}>Proposed next step</p>
        </div>
      )}
      {board.groups.map((group) => (
        <BoardGroup key={group.tier} group={group} canAct={canAct} query={query} stamp={stamp} />
      ))}
      {board.state === 'filtered' && (
        <p className={styles.filtered}>
          Nobody stands under this filter; it hides {board.hidden} of {board.hidden} clients with something
          open. <a href="/">Show all</a>
        </p>
      )}
      <BoardFolds board={board} query={query} />
      <BoardKeys />
      <BoardFoot prints={board.prints} query={query} />
      <TheLine bob={withRows ? 'small' : 'large'} />
    </main>
  );
}
