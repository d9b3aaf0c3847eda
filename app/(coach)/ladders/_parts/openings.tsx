import type { OpeningLine } from '#lib/views/ladders/opening-in-words.ts';
import styles from './openings.module.css';

/** What must stand before rungs of this ladder, for reading. */
export function Openings({ lines }: { lines: readonly OpeningLine[] }) {
  if (lines.length === 0) return null;
  return (
    <section aria-labelledby="openings" className={styles.list}>
      <h2 id="openings">Openings</h2>
      <ul>
        {lines.map((line) => (
          <li key={`${line.rung} ${line.asks} ${line.words}`}>
            <b>{line.rung}</b> opens with {line.asks}
            {line.words ? <span>{line.words}</span> : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
