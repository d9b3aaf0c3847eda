import type { BoardGroup as Group } from '#lib/views/board-types.ts';
import styles from './board.module.css';
import { BoardRow } from './board-row.tsx';

export function BoardGroup({ group, canAct }: { group: Group; canAct: boolean }) {
  const id = `group-${group.tier}`;
  return (
    <section className={styles.group} aria-labelledby={id} data-tier={group.tier}>
      <div className={styles.sideHead}>
        <h2 id={id}>{group.title}</h2>
        <p>{group.rows.length === 1 ? '1 client' : `${group.rows.length} clients`}</p>
      </div>
      <ol className={styles.rows}>
        {group.rows.map((row) => (
          <BoardRow key={row.clientId} row={row} canAct={canAct} />
        ))}
      </ol>
    </section>
  );
}
