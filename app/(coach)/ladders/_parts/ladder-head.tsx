import { FAULT_LABELS } from '#lib/domain/labels.ts';
import type { LadderState } from '#lib/planning/ladders/ladder-state.ts';
import { FAMILY_WORDS } from '#lib/views/ladders/words.ts';
import styles from './ladder.module.css';

/** Name of the ladder, where it stands, what clean means on it. */
export function LadderHead({ ladder, people }: { ladder: LadderState; people: string }) {
  return (
    <header className={styles.head}>
      <h1>{ladder.name}</h1>
      <p className={styles.about}>
        {ladder.skill}, {ladder.part}; {FAMILY_WORDS[ladder.family]}; {people}
        {ladder.retired ? '; retired: no new plan can use it' : ''}
      </p>
      {ladder.clean ? (
        <p className={styles.clean}>
          <b>Clean:</b> {ladder.clean}
        </p>
      ) : null}
      {ladder.faults.length > 0 ? (
        <p className={styles.about}>
          Faults to name: {ladder.faults.map((fault) => FAULT_LABELS[fault]).join(', ')}
        </p>
      ) : null}
    </header>
  );
}
