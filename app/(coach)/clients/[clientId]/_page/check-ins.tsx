import type { TimelineEntry } from '#lib/views/client-timeline.ts';
import styles from './client-page.module.css';

const SHOWN = 8;

export function CheckIns({ entries }: { entries: TimelineEntry[] }) {
  const [newest, older] = [entries.slice(0, SHOWN), entries.slice(SHOWN)];
  return (
    <section aria-labelledby="check-ins">
      <h2 id="check-ins">Check-ins, in the client’s words</h2>
      {entries.length === 0 ? <p>The first check-in will stand here.</p> : null}
      {newest.map((entry) => (
        <Entry key={entry.id} entry={entry} />
      ))}
      {older.length > 0 ? (
        <details>
          <summary className={styles.older}>{older.length} earlier check-ins</summary>
          {older.map((entry) => (
            <Entry key={entry.id} entry={entry} />
          ))}
        </details>
      ) : null}
    </section>
  );
}

function Entry({ entry }: { entry: TimelineEntry }) {
  return (
    <article className={styles.entry} aria-label={`Check-in of ${entry.day}`}>
      <div className={styles.when}>
        <strong title={entry.exact}>{entry.deleted ? <s>{entry.day}</s> : entry.day}</strong>, {entry.about}
        <span>
          {entry.sent}, {entry.deleted ? `${entry.deleted}: counts no more` : entry.seen}
        </span>
      </div>
      <div>
        {entry.words ? <q>{entry.words}</q> : null}
        <p className={styles.facts}>{entry.facts}</p>
      </div>
    </article>
  );
}
