import type { WindowSaid } from '#lib/views/steps/windows-said.ts';
import styles from './steps-tried.module.css';

/** The windows of one step or reason, the shortest first: the answer, the numbers, what else changed. */
export function Windows({ windows }: { windows: WindowSaid[] }) {
  return (
    <ul className={styles.windows}>
      {windows.map((one) => (
        <li key={one.windowDays}>
          <b>{one.words}</b>
          {one.said ? <span> {one.said}.</span> : null}
          {one.changes ? <span className={styles.changes}> {one.changes}.</span> : null}
        </li>
      ))}
    </ul>
  );
}
