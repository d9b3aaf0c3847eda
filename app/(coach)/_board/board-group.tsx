import { toShown } from '#lib/views/board-draw.ts';
import type { DrawnGroup } from '#lib/views/board-types.ts';
import styles from './board.module.css';
import { GroupRows } from './group-rows.tsx';

type Props = {
  group: DrawnGroup;
  canAct: boolean;
  query: string;
  /** Another one for another reading of the board. */
  stamp: string;
};

export function BoardGroup({ group, canAct, query, stamp }: Props) {
  const id = `group-${group.tier}`;
  return (
    <section className={styles.group} aria-labelledby={id} data-tier={group.tier}>
      <div className={styles.sideHead}>
        <h2 id={id}>{group.title}</h2>
        <p>{group.count === 1 ? '1 client' : `${group.count} clients`}</p>
      </div>
      <div>
        <GroupRows
          // Read anew it starts anew: what was added to the page before may have changed since.
          key={stamp}
          tier={group.tier}
          title={group.title}
          rows={group.rows.map(toShown)}
          more={group.more}
          query={query}
          canAct={canAct}
        />
      </div>
    </section>
  );
}
