import { longDate } from '#lib/views/say-date.ts';
import styles from './gaps.module.css';

type Row = { id: string; skill: string; onDate: string; by: string };

/** Assessments kept before, newest first; none is rewritten. */
export function Earlier({
  clientId,
  rows,
  shown,
}: {
  clientId: string;
  rows: Row[];
  shown: string | undefined;
}) {
  const others = rows.filter((row) => row.id !== shown);
  return (
    <section aria-labelledby="earlier">
      <h2 id="earlier">Assessments</h2>
      {shown ? (
        <p>
          <a href={`/clients/${clientId}/gaps`}>Begin a new one</a>
        </p>
      ) : null}
      {others.length === 0 ? (
        <p>{shown ? 'No other one is kept.' : 'None is kept yet. The first one saved will stand here.'}</p>
      ) : (
        <ul className={styles.earlier}>
          {others.map((row) => (
            <li key={row.id}>
              <a href={`/clients/${clientId}/gaps?assessment=${row.id}`}>
                {row.skill}, {longDate(row.onDate)}
              </a>
              , by {row.by}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
