import type { TimelineEntry } from '#lib/views/client-timeline.ts';
import { CheckInActs } from './check-in-acts.tsx';
import styles from './timeline.module.css';

const SHOWN = 8;

type Props = { clientId: string; entries: TimelineEntry[]; mayWrite: boolean };

export function CheckIns({ clientId, entries, mayWrite }: Props) {
  const [newest, older] = [entries.slice(0, SHOWN), entries.slice(SHOWN)];
  return (
    <section aria-labelledby="check-ins">
      <h2 id="check-ins">Check-ins, in the client’s words</h2>
      {entries.length === 0 ? <p>The first check-in will stand here.</p> : null}
      {newest.map((entry) => (
        <Entry key={entry.id} entry={entry} writeTo={mayWrite ? clientId : null} />
      ))}
      {older.length > 0 ? (
        <details>
          <summary className={styles.older}>{older.length} earlier check-ins</summary>
          {older.map((entry) => (
            <Entry key={entry.id} entry={entry} writeTo={mayWrite ? clientId : null} />
          ))}
        </details>
      ) : null}
    </section>
  );
}

function Entry({ entry, writeTo }: { entry: TimelineEntry; writeTo: string | null }) {
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
        {entry.before.map((old) => (
          <details key={old.id} className={styles.before}>
            <summary>Corrected: as it was, {old.sent}</summary>
            <p>{old.about}</p>
            {old.words ? <q>{old.words}</q> : null}
            <p className={styles.facts}>{old.facts}</p>
          </details>
        ))}
        {entry.said.map((word) => (
          <div key={word.id} className={styles.word}>
            <p>
              {word.about ? <b>{word.about}: </b> : null}
              {word.text}
            </p>
            <p className={styles.facts}>{word.who}</p>
          </div>
        ))}
        {writeTo && !entry.deleted ? (
          <CheckInActs
            clientId={writeTo}
            checkInId={entry.id}
            day={entry.day}
            sets={entry.sets}
            unseen={entry.unseen}
          />
        ) : null}
      </div>
    </article>
  );
}
