import type { TimelineEntry } from '#lib/views/client-timeline.ts';
import styles from './client-page.module.css';

export function CheckIns({ entries }: { entries: TimelineEntry[] }) {
  return (
    <section aria-labelledby="check-ins">
      <h2 id="check-ins">Check-ins, in the client’s words</h2>
      {entries.length === 0 ? <p>The first check-in will stand here.</p> : null}
      {entries.map((entry) => (
        <article key={entry.id} className={styles.entry} aria-label={`Check-in of ${entry.day}`}>
          <div className={styles.when}>
            <strong title={entry.exact}>{entry.day}</strong>, {entry.about}
            <span>
              {entry.sent}, {entry.seen}
            </span>
          </div>
          <div>
            {entry.words ? <q>{entry.words}</q> : null}
            <ul className={styles.facts}>
              {entry.facts.map((fact) => (
                <li key={fact}>{fact}</li>
              ))}
            </ul>
          </div>
        </article>
      ))}
    </section>
  );
}
