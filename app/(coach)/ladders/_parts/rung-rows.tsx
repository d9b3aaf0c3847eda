import Link from 'next/link';
import type { LadderPage, RungLine } from '#lib/views/ladders/ladder-page.ts';
import styles from './ladder.module.css';

type Props = { ladderId: string; rungs: LadderPage['rungs']; mayEdit: boolean };

/** The rungs as a ladder stands: the hardest on top, the first at the foot. */
export function RungRows({ ladderId, rungs, mayEdit }: Props) {
  return (
    <ol className={styles.rungs} reversed aria-label="Rungs, hardest on top">
      {rungs.map((rung) => (
        <li key={rung.id} value={rung.number}>
          <span className={styles.number}>{rung.number}</span>
          <div className={styles.what}>
            <h3>{rung.name}</h3>
            <p>
              <b>{rung.mark}</b>, {rung.asks}
            </p>
            {rung.note ? <p className={styles.quiet}>{rung.note}</p> : null}
          </div>
          <p className={styles.drill}>
            {rung.drill}
            {rung.kit ? <span>On or with: {rung.kit}</span> : null}
          </p>
          <Who rung={rung} />
          {mayEdit ? (
            <p className={styles.rungActs}>
              <Link
                href={`/ladders/${ladderId}/rungs/${rung.id}`}
                aria-label={`Change ${rung.name}, rung ${rung.number}`}
              >
                Change
              </Link>
              <Link
                href={`/ladders/${ladderId}/rungs/${rung.id}/split`}
                aria-label={`Split ${rung.name}, rung ${rung.number}`}
              >
                Split
              </Link>
            </p>
          ) : null}
        </li>
      ))}
    </ol>
  );
}

function Who({ rung }: { rung: RungLine }) {
  const names = (list: RungLine['stands']) =>
    list.map((one, index) => (
      <span key={one.clientId}>
        {index > 0 ? '; ' : ''}
        <Link href={`/clients/${one.clientId}`}>{one.words}</Link>
      </span>
    ));
  if (rung.stands.length + rung.planned.length === 0) return <p className={styles.who} />;
  return (
    <p className={styles.who}>
      {rung.stands.length > 0 ? <span className={styles.names}>Here: {names(rung.stands)}</span> : null}
      {rung.planned.length > 0 ? <span className={styles.names}>Planned: {names(rung.planned)}</span> : null}
    </p>
  );
}
